// oxlint-disable-next-line typescript/triple-slash-reference -- so that all rooms that see this file see the types
/// <reference path="./papaparse.d.ts" />
import papa from 'papaparse';

export default papa;
