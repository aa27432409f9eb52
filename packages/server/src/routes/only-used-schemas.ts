const REFERENCE = /"#\/components\/schemas\/([^"]+)"/g;

/** What is looked at of an API description. */
interface Described {
  readonly paths?: unknown;
  readonly components?: { readonly schemas?: Readonly<Record<string, unknown>> };
}

/** Leaves out what no request and no answer refers to: each schema is offered as input and as output. */
export function onlyUsedSchemas<Description extends Described>(description: Description): Description {
  const schemas = description.components?.schemas ?? {};
  const used = new Set<string>();
  const follow = (part: unknown): void => {
    for (const [, name = ''] of JSON.stringify(part ?? null).matchAll(REFERENCE)) {
      if (used.has(name)) continue;
      used.add(name);
      follow(schemas[name]);
    }
  };
  follow(description.paths);
  const kept = Object.fromEntries(Object.entries(schemas).filter(([name]) => used.has(name)));
  return { ...description, components: { ...description.components, schemas: kept } };
}
