// What every JavaScript environment has besides the language itself: rooms that run everywhere use no more.
declare const performance: { now(): number };
declare const console: { error(...said: readonly unknown[]): void };
interface ErrorConstructor {
  stackTraceLimit: number;
}
interface TextDecoder {
  decode(bytes?: Uint8Array, options?: { stream?: boolean }): string;
}
declare const TextDecoder: new (encoding?: string, options?: { fatal?: boolean; ignoreBOM?: boolean }) => TextDecoder;
declare const TextEncoder: new () => { encode(text?: string): Uint8Array<ArrayBuffer> };
