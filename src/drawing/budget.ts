/** Bounds on what a small text may blow up to. What is written out counts for nothing; only repetition is bounded. */

/** Elements drawn through `use`, in one drawing. */
const MAX_INSTANCED_ELEMENTS = 300_000;
/** Curves of elements drawn through `use`, of clip paths drawn again and again, and of dashes. */
const MAX_REPEATED_CURVES = 3_000_000;
/** Elements looked at for the geometry boxes of groups, which may lie within each other. */
const MAX_BOXED_ELEMENTS = 500_000;
/** `use` within `use`, and clips within clips. */
export const MAX_NESTING = 100;

export class Budget {
  private elements = 0;
  private curves = 0;
  private boxed = 0;

  /** Counts one element drawn through `use`; false when there have been too many. */
  spendElement(): boolean {
    this.elements += 1;
    return this.elements <= MAX_INSTANCED_ELEMENTS && this.curves <= MAX_REPEATED_CURVES;
  }

  /** Counts curves that repeat what is written; false when there have been too many. */
  spendCurves(count: number): boolean {
    this.curves += count;
    return this.curves <= MAX_REPEATED_CURVES;
  }

  /** Counts one element looked at for a geometry box; false when there have been too many. */
  spendBoxed(): boolean {
    this.boxed += 1;
    return this.boxed <= MAX_BOXED_ELEMENTS;
  }
}
