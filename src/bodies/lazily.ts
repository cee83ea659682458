/** An object whose fields are each worked out when first read, and once: what stands far down a page need not be ready at once. */
export function lazily<T extends object>(fields: { readonly [Field in keyof T]: () => T[Field] }): T {
  const object = {} as T;
  for (const field of Object.keys(fields) as (keyof T)[]) {
    Object.defineProperty(object, field, {
      enumerable: true,
      configurable: true,
      get() {
        const value = fields[field]();
        Object.defineProperty(object, field, { value, enumerable: true });
        return value;
      },
    });
  }
  return object;
}
