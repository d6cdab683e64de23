/** What can be asked of a curve, gathered in one place. */
export { curvatureAt, derivativeAt, pointAt, tangentAt } from './evaluate';
export { intersectWithLine } from './intersect';
export { boundsOf, lengthOf, roughBoundsOf, signedAreaOf } from './measure';
export { isQuicklyNear, type NearestOnCurve, nearestOn } from './nearest';
export { isPlainlyOff } from './off';
export { splitCurve, subCurve } from './subdivide';
export { reverseCurve, transformCurve } from './transform';
