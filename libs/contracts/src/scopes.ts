/**
 * What a token can be held to, of what its role may: everything that is asked, or the tellings of one kind of program.
 * Names of routes as plain text: the table of routes itself has a shape that names these scopes.
 */
export const SCOPES = {
  read: 'asks',
  figures: ['metrics'],
  work: ['work', 'asking', 'signOff', 'correction', 'defect', 'rework', 'start', 'move'],
  equipment: ['lot', 'mounting', 'unmounting', 'calibration'],
  orders: ['home', 'orderChange'],
} as const satisfies { readonly [scope: string]: 'asks' | readonly string[] };

export type Scope = keyof typeof SCOPES;
export const SCOPE_NAMES = [
  'read',
  'figures',
  'work',
  'equipment',
  'orders',
] as const satisfies readonly Scope[];
const isScope = (name: string): name is Scope => Object.hasOwn(SCOPES, name);

/** Whether one of these scopes has this route. `metrics` is a program's own and not among what is asked. */
export const inScopes = (
  scopes: readonly string[],
  { name, method }: { readonly name: string; readonly method: string },
): boolean =>
  scopes.filter(isScope).some((scope) => {
    const held: 'asks' | readonly string[] = SCOPES[scope];
    return held === 'asks' ? method === 'GET' && name !== 'metrics' : held.includes(name);
  });
