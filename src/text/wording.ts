/** How something is told to people: a line that lists have room for, and the rest where there is room. */
export interface Wording {
  /** What is, with its measure and its limit within the first 80 characters; at most 120 in all. One cure at most. */
  readonly message: string;
  /** Full sentences: why, in card and paint, all cures, and the setting that decides. */
  readonly detail?: string;
}
