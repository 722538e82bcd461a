// Makes a switch over a closed union fail to compile when a member is added and not handled.

export function assertNever(value: never, what: string): never {
  throw new Error(`Unhandled ${what}: ${JSON.stringify(value)}`);
}
