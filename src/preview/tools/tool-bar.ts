/** The row of tools that work on the picture itself, and which of them a click takes. */
import { html } from '../dom/dom';
import type { Calibration } from '../panels/calibration';

/** What a click on the picture does: pick a part, measure, or put in a bridge. */
export type PreviewTool = 'pick' | 'measure' | 'bridge';

const TOOLS: Readonly<Record<PreviewTool, { readonly label: string; readonly title: string; readonly key: string }>> = {
  pick: { label: 'Pick', title: 'Select the text of what is clicked', key: 'p' },
  measure: { label: 'Measure', title: 'Measure from point to point', key: 'm' },
  bridge: { label: 'Bridge', title: 'Put a bridge across the gap that is clicked', key: 'b' },
};

export class ToolChoice {
  readonly element = html('span', { role: 'radiogroup', 'aria-label': 'What a click does', class: 'tools' });
  private readonly radios: Readonly<Record<PreviewTool, HTMLInputElement>>;

  constructor(chosen: (tool: PreviewTool) => void) {
    const names = Object.keys(TOOLS) as PreviewTool[];
    const radios = names.map((tool) => {
      const input = html('input', { type: 'radio', name: 'tool' });
      input.addEventListener('change', () => chosen(tool));
      return [tool, input] as const;
    });
    this.radios = Object.fromEntries(radios) as Record<PreviewTool, HTMLInputElement>;
    this.element.append(
      ...radios.map(([tool, input]) => {
        const { label, title, key } = TOOLS[tool];
        return html('label', { title: `${title} (${key.toUpperCase()})` }, [input, label]);
      }),
    );
    this.draw('pick');
  }

  draw(tool: PreviewTool): void {
    this.radios[tool].checked = true;
  }
}

/** The tool that a key chooses. */
export function toolForKey(key: string): PreviewTool | undefined {
  return (Object.keys(TOOLS) as PreviewTool[]).find((tool) => TOOLS[tool].key === key.toLowerCase());
}

export interface ToolButtonsActions {
  calibrate(): void;
  bed(shown: boolean): void;
}

export class ToolButtons {
  readonly element: HTMLElement;
  private readonly bed: HTMLElement;

  constructor(choice: HTMLElement, calibration: Calibration, actions: ToolButtonsActions) {
    const calibrate = html('button', { type: 'button', class: 'tool' }, ['Measure the screen…']);
    calibrate.addEventListener('click', () => actions.calibrate());
    const input = html('input', { type: 'checkbox' });
    input.addEventListener('change', () => actions.bed(input.checked));
    this.bed = html('label', {}, [input, 'Bed']);
    this.element = html('div', { class: 'hand-tools', role: 'group', 'aria-label': 'On the picture' }, [
      choice,
      this.bed,
      calibrate,
      calibration.element,
    ]);
  }

  /** @param bed of the cutter, where the project says it */
  draw(bed: readonly [number, number] | undefined): void {
    this.bed.hidden = bed === undefined;
  }
}
