/** The tools that work on the picture itself, and which of them a click takes. */
import type { Command, CommandGroup } from '../panels/command';

/** What a click on the picture does: find the text of a part, measure, or put in a bridge. */
export type PreviewTool = 'pick' | 'measure' | 'bridge';

type ToolWords = Required<Pick<Command, 'name' | 'icon' | 'hint' | 'key'>>;

const TOOLS: Readonly<Record<PreviewTool, ToolWords>> = {
  pick: { name: 'Find in text', icon: 'inspect', hint: 'select the text of what is clicked', key: 'F' },
  measure: { name: 'Measure', icon: 'symbol-ruler', hint: 'from point to point', key: 'M' },
  bridge: { name: 'Bridge', icon: 'link', hint: 'across the gap that is clicked', key: 'B' },
};

/** What is said when a tool is taken up. */
export const GREETINGS: Readonly<Record<PreviewTool, string>> = {
  pick: '',
  measure: 'Measure from the first point.',
  bridge: 'Click a gap to bridge it, or a bridge to change it. B again goes from bridge to bridge.',
};

const NAMES = Object.keys(TOOLS) as PreviewTool[];

export class ToolChoice {
  readonly commands: CommandGroup;
  private tool: PreviewTool = 'pick';
  private readonly changed: () => void;

  /**
   * @param chosen is called with the tool that was chosen by its button
   * @param changed is called when another tool is in hand, however it was chosen
   */
  constructor(chosen: (tool: PreviewTool) => void, changed: () => void) {
    this.changed = changed;
    this.commands = {
      name: 'Tool',
      commands: NAMES.map((tool) => ({
        ...TOOLS[tool],
        kind: 'choice',
        isOn: () => tool === this.tool,
        run: () => chosen(tool),
      })),
    };
  }

  draw(tool: PreviewTool): void {
    this.tool = tool;
    this.changed();
  }
}

/** The tool that a key chooses. */
export function toolForKey(key: string): PreviewTool | undefined {
  return NAMES.find((tool) => TOOLS[tool].key === key.toUpperCase());
}
