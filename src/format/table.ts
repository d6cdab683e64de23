/** Columns of text under each other. */

export interface Column<Row> {
  readonly heading: string;
  readonly align: 'left' | 'right';
  readonly cell: (row: Row) => string;
}

/** Lines of a table with two blanks between its columns; the heading comes first. */
export function tableLines<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): string[] {
  const cells = columns.map(({ heading, cell }) => [heading, ...rows.map(cell)]);
  const padded = cells.map((texts, index) => padAll(texts, columns[index]?.align ?? 'left'));
  return ['', ...rows].map((_, line) =>
    padded
      .map((texts) => texts[line])
      .join('  ')
      .trimEnd(),
  );
}

/** Brings all texts to the length of the longest, counted in characters. */
export function padAll(texts: readonly string[], align: 'left' | 'right'): string[] {
  const width = texts.reduce((longest, text) => Math.max(longest, lengthOf(text)), 0);
  return texts.map((text) => {
    const blanks = ' '.repeat(width - lengthOf(text));
    return align === 'left' ? text + blanks : blanks + text;
  });
}

function lengthOf(text: string): number {
  return [...text].length;
}
