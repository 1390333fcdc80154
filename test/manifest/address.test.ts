import { createRequire } from "node:module";

type Configure = (env: object, options: { readonly mode: string }) => readonly object[];

const config = createRequire(__filename)("../../webpack.config.js") as Configure;

const before = process.env.ENCLOSURE_ADDRESS;

afterEach(() => {
  if (before === undefined) delete process.env.ENCLOSURE_ADDRESS;
  else process.env.ENCLOSURE_ADDRESS = before;
});

test.each([
  ["production", "https://localhost:3000", "the address it will be served from"],
  ["production", "https://127.0.0.1", "the address it will be served from"],
  ["production", "http://addin.example", "an https address without a slash at the end"],
  ["development", "https://addin.example/", "an https address without a slash at the end"],
  ["development", "https://", "an https address without a slash at the end"],
])("a %s build refuses to be served from %s", (mode, address, cure) => {
  process.env.ENCLOSURE_ADDRESS = address;
  expect(() => config({}, { mode })).toThrow(`ENCLOSURE_ADDRESS: got ${address}`);
  expect(() => config({}, { mode })).toThrow(cure);
});

test.each([
  ["production", "https://addin.example/enclosures"],
  ["development", "https://localhost:3000"],
])("a %s build may be served from %s", (mode, address) => {
  process.env.ENCLOSURE_ADDRESS = address;
  expect(() => config({}, { mode })).not.toThrow();
});
