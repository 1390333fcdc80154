// Node's typings have the value of this name alone.
interface TextDecoder extends InstanceType<typeof import("node:util").TextDecoder> {}
