/** What a command answers: for a person, and for a program with `--json`. */
export interface Output {
  readonly text: string;
  readonly json: unknown;
}
