/**
 * The function, made to remember what it gave for each object as long as that object lives. It is for objects that
 * never change and are met again after an edit: the curves of an outline, the rings and polygons of a region.
 */
export function memoizeByIdentity<Key extends object, Value>(compute: (of: Key) => Value): (of: Key) => Value {
  const known = new WeakMap<Key, { readonly value: Value }>();
  return (of) => {
    const before = known.get(of);
    if (before) return before.value;
    const value = compute(of);
    known.set(of, { value });
    return value;
  };
}
