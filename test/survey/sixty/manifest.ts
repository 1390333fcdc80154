import type { MadeSurvey } from "./made";
import { plain } from "./plain";
import { hard } from "./hard";

/** Sixty surveys in twelve languages. */
export const SURVEYS: readonly MadeSurvey[] = [...plain, ...hard];
