// What the tests use of node, so that checking types needs nothing from outside.

declare module 'node:test' {
  export function test(name: string, body: () => void | Promise<void>): void
}

declare module 'node:assert/strict' {
  const assert: {
    equal(got: unknown, want: unknown, says?: string): void
    deepEqual(got: unknown, want: unknown, says?: string): void
    ok(value: unknown, says?: string): void
  }
  export default assert
}
