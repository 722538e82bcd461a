// Every field that an answer can hold, as paths, read from the contract's own schemas: so that none can leave without being noticed.
import type { z } from 'zod';

type Def = {
  readonly type: string;
  readonly shape?: Readonly<Record<string, z.ZodType>>;
  readonly element?: z.ZodType;
  readonly innerType?: z.ZodType;
  readonly valueType?: z.ZodType;
  readonly options?: readonly z.ZodType[];
  readonly items?: readonly z.ZodType[];
  readonly in?: z.ZodType;
  readonly getter?: () => z.ZodType;
};

/** The parts of a schema under a path; empty for a leaf. */
function partsOf(schema: z.ZodType, path: string): readonly (readonly [string, z.ZodType])[] | null {
  const def = schema.def as unknown as Def;
  if (def.shape) return Object.entries(def.shape).map(([key, part]) => [path === '' ? key : `${path}.${key}`, part]);
  if (def.element) return [[`${path}[]`, def.element]];
  if (def.valueType) return [[`${path}{}`, def.valueType]];
  if (def.options) return def.options.map((option) => [path, option]);
  if (def.items) return def.items.map((item) => [`${path}[]`, item]);
  if (def.innerType) return [[path, def.innerType]];
  if (def.in) return [[path, def.in]];
  return null;
}

export function leavesOf(schema: z.ZodType): readonly string[] {
  const found = new Set<string>();
  const walk = (part: z.ZodType, path: string) => {
    const parts = partsOf(part, path);
    if (parts === null) found.add(path);
    else for (const [inside, inner] of parts) walk(inner, inside);
  };
  walk(schema, '');
  return [...found].sort();
}

/** What stands at the leaves of a value, by the same paths. */
export function valuesAtLeaves(value: unknown, path = ''): readonly (readonly [string, unknown])[] {
  if (Array.isArray(value)) return value.flatMap((entry) => valuesAtLeaves(entry, `${path}[]`));
  if (typeof value !== 'object' || value === null) return [[path, value]];
  return Object.entries(value).flatMap(([key, entry]) => valuesAtLeaves(entry, path === '' ? key : `${path}.${key}`));
}
