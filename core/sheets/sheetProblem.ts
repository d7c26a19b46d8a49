/** Why a set of sheets cannot be made as asked, and what to choose instead. */
export class SheetProblem extends Error {
  /** What to do, as a sentence. */
  readonly remedy: string;

  constructor(message: string, remedy: string) {
    super(message);
    this.name = 'SheetProblem';
    this.remedy = remedy;
  }
}
