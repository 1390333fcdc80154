/** The bundler takes styles as imports. */
declare module "*.css";
