/** Loose parts that reach no farther than a plain strip may, and lift all the same: a path in a sheet of 120 mm. */
const sheetOf = (data: string): string =>
  '<svg xmlns="http://www.w3.org/2000/svg" width="120mm" height="120mm" viewBox="0 0 120 120" ' +
  `data-tombolo-reading="openings"><path fill-rule="evenodd" d="${data}"/></svg>`;

export const HEADS = {
  lollipop: sheetOf('M10 10H59.25V20A10 10 0 1 0 60.75 20V10H110V110H10Z'),
  'whisker of 0.5 by 20 mm': sheetOf('M10 10H59.75V30H60.25V10H110V110H10Z'),
  T: sheetOf('M10 10H59V30H42V35H78V30H61V10H110V110H10Z'),
  hook: sheetOf('M10 10H59V32H75V46H79V28H61V10H110V110H10Z'),
  'long oval': sheetOf('M10 10H59.5V18A14 7 0 1 0 60.5 18V10H110V110H10Z'),
} as const;
