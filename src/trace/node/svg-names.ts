/** The elements of SVG 2 (appendix "Element Index") that programs write into strings; others are left alone. */
const SVG_NAMES = [
  'a|animate|animateMotion|animateTransform|circle|clipPath|defs|desc|ellipse|fe[A-Z][A-Za-z]*|filter|foreignObject|g|image',
  'line|linearGradient|marker|mask|metadata|mpath|path|pattern|polygon|polyline|radialGradient|rect|set|stop|style|svg',
  'switch|symbol|text|textPath|title|tspan|use|view',
].join('|');

/** The start of a start tag, up to the end of its name. */
export function startTags(): RegExp {
  return new RegExp(`<(?:[A-Za-z_][\\w.-]*:)?(?:${SVG_NAMES})(?=[\\s/>]|\\\\[nrt]|$)`, 'g');
}
