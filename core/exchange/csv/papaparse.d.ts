/** The two calls of papaparse that are used, typed here so that `core` need not see the types of Node and the DOM. */
declare module 'papaparse' {
  interface ParseResult {
    readonly data: string[][];
    readonly errors: readonly { readonly message: string; readonly row?: number }[];
    readonly meta: { readonly delimiter: string };
  }
  interface Papa {
    parse(
      text: string,
      options: {
        readonly delimiter?: string;
        readonly delimitersToGuess?: readonly string[];
        readonly skipEmptyLines?: 'greedy';
      },
    ): ParseResult;
    unparse(rows: readonly (readonly (string | number)[])[], options: { readonly newline: string }): string;
  }
  const papa: Papa;
  export default papa;
}
