import js from "@eslint/js";
import regexp from "eslint-plugin-regexp";
import tseslint from "typescript-eslint";

export default tseslint.config(
  { ignores: ["dist/", "node_modules/", "demo-output/"] },
  js.configs.recommended,
  ...tseslint.configs.recommended,
  {
    // Rules that ask the type checker. Each of the three folders is in tsconfig.json.
    files: ["{src,functions,test}/**/*.{ts,tsx}"],
    extends: [tseslint.configs.recommendedTypeCheckedOnly],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: `${import.meta.dirname}/..` } },
  },
  {
    // What the host shows as an error of a cell: a class of its own, which is no Error.
    files: ["functions/cells.ts"],
    rules: {
      "@typescript-eslint/only-throw-error": [
        "error",
        { allow: [{ from: "package", package: "custom-functions-runtime", name: "Error" }] },
      ],
    },
  },
  {
    files: ["test/**/*.ts"],
    rules: {
      // Jest's own matchers, such as expect.any, are typed as any.
      "@typescript-eslint/no-unsafe-assignment": "off",
      // A value of the wrong type must show in the failing comparison; it need not read well.
      "@typescript-eslint/no-base-to-string": "off",
    },
  },
  {
    rules: {
      "@typescript-eslint/consistent-type-imports": "error",
      "@typescript-eslint/no-explicit-any": "error",
      eqeqeq: "error",
      "prefer-const": "error",
    },
  },
  {
    // A cell may hold 32,767 letters: no pattern may take a time that grows with their square.
    files: ["src/**/*.ts", "src/**/*.tsx", "functions/**/*.ts"],
    plugins: { regexp },
    rules: {
      "regexp/no-super-linear-backtracking": ["error", { report: "potential" }],
      "regexp/no-super-linear-move": ["error", { report: "potential" }],
    },
  },
  {
    // webpack reads these as CommonJS.
    files: ["webpack.config.js", ".config/build/*.js"],
    languageOptions: {
      globals: { require: "readonly", module: "writable", __dirname: "readonly", process: "readonly" },
    },
    rules: { "@typescript-eslint/no-require-imports": "off" },
  },
  {
    files: [".config/*.mjs"],
    languageOptions: { globals: { process: "readonly", console: "readonly", URL: "readonly" } },
  },
  {
    // Typings that take the place of others: an empty one adds to a name.
    files: [".config/types/**/*.d.ts"],
    rules: {
      "@typescript-eslint/no-empty-object-type": "off",
      "@typescript-eslint/consistent-type-imports": "off",
    },
  },
  { files: ["functions/**/*.ts"], rules: { "@typescript-eslint/no-explicit-any": "off" } },
);
