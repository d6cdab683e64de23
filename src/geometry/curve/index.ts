/** What can be asked of a curve, gathered in one place. */
export { curvatureAt, derivativeAt, pointAt, tangentAt } from './evaluate';
export { reverseCurve, transformCurve } from './transform';
export { splitCurve, subCurve } from './subdivide';
export { boundsOf, lengthOf, roughBoundsOf, signedAreaOf } from './measure';
export { intersectWithLine, isQuicklyNear, nearestOn, type NearestOnCurve } from './intersect';
