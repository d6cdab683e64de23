/** Drawings for the tests of the library, as texts. */

const sized = (content: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60">${content}</svg>`;

/** A ring: its middle is an island of 400 mm². */
export const RING = sized('<g id="ring"><path d="M10 10h40v40h-40z M20 20v20h20v-20z"/></g>');

/** Two colours; the later one covers the island of the earlier. */
export const COVERED = sized(
  '<g id="under" fill="#336699"><path d="M10 10h40v40h-40z M20 20v20h20v-20z"/></g>' +
    '<g id="over" fill="#993333"><path d="M15 15h30v30h-30z"/></g>',
);

/** An opening that later paint hides, and a size that nobody states. */
export const BURIED =
  '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 200 200" width="200" height="200">' +
  '<g id="under" fill="#336699"><path d="M80 80h20v20h-20z"/><path d="M10 10h30v30h-30z"/></g>' +
  '<g id="over" fill="#993333"><path d="M60 60h80v80h-80z"/></g></svg>';
