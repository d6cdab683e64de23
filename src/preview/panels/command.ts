/** Something that the artist can do or choose: a button of the toolbar, or a row of a menu where there is no room. */
export interface Command {
  /** What it is called everywhere. */
  readonly name: string;
  /** Of the editor's own icons, the part of the class after `codicon-`. */
  readonly icon: string;
  /** What it does, where the name does not say it. */
  readonly hint?: string;
  /** The key that does the same on the picture. */
  readonly key?: string;
  /** One of several that exclude each other; something that is on or off; something that is done. */
  readonly kind: 'choice' | 'toggle' | 'action';
  readonly isOn?: () => boolean;
  /** Whether there is anything that it could do; where not, it is not shown. */
  readonly isThere?: () => boolean;
  run(): void;
}

export interface CommandGroup {
  /** Of choices, what is chosen. */
  readonly name: string;
  readonly commands: readonly Command[];
}

export const isThere = ({ isThere: there }: Command): boolean => there?.() !== false;

/** "Zoom in (+)", "Measure: from point to point (M)" */
export function tooltipOf({ name, hint, key }: Command): string {
  return `${name}${hint === undefined ? '' : `: ${hint}`}${key === undefined ? '' : ` (${key})`}`;
}

/** The ARIA attributes that tell a command's state, on a button or in a menu. */
export function stateOf({ kind, isOn }: Command): Readonly<Record<string, string>> {
  if (kind === 'action') return {};
  return { [kind === 'choice' ? 'aria-checked' : 'aria-pressed']: String(isOn?.() === true) };
}
