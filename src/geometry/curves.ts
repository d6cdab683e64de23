/** What can be asked of a curve, gathered in one place. */
export { curvatureAt, derivativeAt, pointAt, tangentAt } from './evaluate';
export { reverseCurve, transformCurve } from './transform-curve';
export { splitCurve, subCurve } from './split-curve';
export { boundsOf, lengthOf, roughBoundsOf, signedAreaOf } from './measure-curve';
export { intersectWithLine, isQuicklyNear, nearestOn, type Nearest } from './meet-curve';
