import { whyNotFields } from '../../model/edits/support/checkFields.ts';
import type { NewId } from '../../model/edits/support/edit.ts';
import { type Project, projectOf, putAll, removeAll } from '../../model/project.ts';
import type { CatalogueItem, Kit, LabourRate, LabourUnit } from '../../model/things.ts';
import { withOwnPrices } from '../../quantities/edits/changePrices.ts';
import { labourUnits, workMeasure } from '../../quantities/measures.ts';
import type { PriceList } from '../../quantities/order/priceList.ts';
import { plainWords } from '../../words/figures.ts';
import { type Message, message } from '../../words/message.ts';
import { type Outcome, refuse } from './outcome.ts';
import { type CsvRow, type CsvTable, readCsv, readFigure } from './readCsv.ts';
import { type Cell, writeCsv } from './writeCsv.ts';

/**
 * The price list as one table. `row` tells items, labour rates and the parts of kits apart; `serves` is the quantity
 * that an item or kit is for. Prices are of one pack, before tax.
 */
const columns = [
  'row',
  'id',
  'name',
  'serves',
  'unit',
  'pack size',
  'price',
  'tax %',
  'waste %',
  'invented',
  'note',
  'part',
  'part amount',
] as const;
type Column = (typeof columns)[number];

export function writePriceList(prices: PriceList): string {
  return writeCsv(columns, [
    ...[...prices.items.values()].map(itemRow),
    ...prices.labour.map(labourRow),
    ...prices.kits.flatMap((kit) => kit.parts.map(({ itemId, amount }) => kitRow(kit, itemId, amount))),
  ]);
}

function itemRow(item: CatalogueItem): Cell[] {
  const { id, name, measure, unit, packSize, price, taxPercent, wastePercent, invented, note } = item;
  return [
    'item',
    id,
    name,
    measure ?? '',
    unit,
    packSize,
    price,
    taxPercent,
    wastePercent,
    yes(invented),
    note,
    '',
    null,
  ];
}

function labourRow({ id, per, rate, taxPercent, invented }: LabourRate): Cell[] {
  const { unit } = workMeasure(per);
  const name = plainWords().order.work[per];
  return ['labour', id, name, per, unit, 1, rate, taxPercent, null, yes(invented), '', '', null];
}

function kitRow({ id, name, measure }: Kit, itemId: string, amount: number): Cell[] {
  return ['kit', id, name, measure, '', null, null, null, null, '', '', itemId, amount];
}

function yes(flag: boolean): string {
  return flag ? 'yes' : 'no';
}

/** What a table holds, and a message for each row that can't be used. */
export interface ReadPriceList {
  readonly items: readonly CatalogueItem[];
  readonly kits: readonly Kit[];
  readonly labour: readonly LabourRate[];
  readonly leftOut: readonly { readonly line: number; readonly why: Message }[];
}

/**
 * Reads a price list; only the columns `name` and `price` must be there. A row without an id gets that of the item of
 * the same name in `present`, or a new one.
 */
export function readPriceList(text: string, present: PriceList, newId: NewId): Outcome<ReadPriceList> {
  const table = readCsv(text);
  if (!table.ok) return table;
  const missing = (['name', 'price'] as const).filter((column) => !table.value.columns.includes(column));
  if (missing.length > 0) {
    const found = table.value.columns.filter((column) => column !== '');
    return refuse(
      message('exchange.file.noColumns', { missing, columns: found }),
      message('exchange.remedy.columnsAsExported'),
    );
  }
  return { ok: true, value: new Reading(table.value, present, newId).read() };
}

class Reading {
  readonly #table: CsvTable;
  readonly #newId: NewId;
  readonly #present: PriceList['items'];
  readonly #idByName: ReadonlyMap<string, string>;
  readonly #items = new Map<string, CatalogueItem>();
  readonly #kits = new Map<string, Kit>();
  readonly #labour = new Map<string, LabourRate>();
  readonly #leftOut: { line: number; why: Message }[] = [];

  constructor(table: CsvTable, present: PriceList, newId: NewId) {
    this.#table = table;
    this.#newId = newId;
    this.#present = present.items;
    this.#idByName = new Map([...present.items.values()].map(({ id, name }) => [name.trim().toLowerCase(), id]));
  }

  read(): ReadPriceList {
    for (const row of this.#table.rows) {
      const why = this.#take(row);
      if (why !== null) this.#leftOut.push({ line: row.line, why });
    }
    return {
      items: [...this.#items.values()],
      kits: [...this.#kits.values()],
      labour: [...this.#labour.values()],
      leftOut: this.#leftOut,
    };
  }

  /** Takes a row in; why it can't, else null. */
  #take(row: CsvRow): Message | null {
    const sort = this.#cell(row, 'row').toLowerCase() || 'item';
    if (sort === 'item') return this.#takeItem(row);
    if (sort === 'labour') return this.#takeLabour(row);
    if (sort === 'kit') return this.#takeKitPart(row);
    return message('exchange.priceList.unknownRow', { sort });
  }

  /** Of an item that is in the list already, what the table has no column for stays as it is. */
  #takeItem(row: CsvRow): Message | null {
    const name = this.#cell(row, 'name');
    const id = this.#cell(row, 'id') || this.#idByName.get(name.toLowerCase()) || this.#newId('catalogueItem');
    const known = this.#present.get(id) ?? emptyItem;
    const has = (column: Column) => this.#table.columns.includes(column);
    const fields = {
      name,
      measure: has('serves') ? this.#cell(row, 'serves') || null : known.measure,
      unit: this.#cell(row, 'unit') || known.unit,
      packSize: this.#figure(row, 'pack size') ?? known.packSize,
      price: this.#figure(row, 'price'),
      taxPercent: has('tax %') ? this.#figure(row, 'tax %') : known.taxPercent,
      wastePercent: this.#figure(row, 'waste %') ?? known.wastePercent,
      invented: isYes(this.#cell(row, 'invented')),
      note: has('note') ? this.#cell(row, 'note') : known.note,
    };
    const why = whyNot('catalogueItem', fields) ?? whyNotId(id);
    if (why !== null) return why;
    if (this.#items.has(id)) return message('exchange.priceList.idTwice', { id });
    this.#items.set(id, { kind: 'catalogueItem', id, ...fields } as CatalogueItem);
    return null;
  }

  #takeLabour(row: CsvRow): Message | null {
    const fields = {
      per: this.#cell(row, 'serves') as LabourUnit,
      rate: this.#figure(row, 'price'),
      taxPercent: this.#figure(row, 'tax %'),
      invented: isYes(this.#cell(row, 'invented')),
    };
    if (!labourUnits.includes(fields.per)) {
      return message('exchange.priceList.unknownWork', { per: fields.per, units: labourUnits });
    }
    const why = whyNot('labourRate', fields);
    if (why !== null) return why;
    const id = `labour:${fields.per}`;
    this.#labour.set(id, { kind: 'labourRate', id, ...fields });
    return null;
  }

  #takeKitPart(row: CsvRow): Message | null {
    const name = this.#cell(row, 'name');
    const id = this.#cell(row, 'id') || this.#kitByName(name)?.id || this.#newId('kit');
    const known = this.#kits.get(id);
    const part = { itemId: this.#cell(row, 'part'), amount: this.#figure(row, 'part amount') ?? 1 };
    const fields = { name, measure: this.#cell(row, 'serves'), parts: [...(known?.parts ?? []), part] };
    if (part.itemId === '') return message('exchange.priceList.noPart');
    const why = whyNot('kit', fields) ?? whyNotId(id);
    if (why !== null) return why;
    this.#kits.set(id, { kind: 'kit', id, ...fields });
    return null;
  }

  #kitByName(name: string): Kit | undefined {
    return [...this.#kits.values()].find((kit) => kit.name === name);
  }

  #cell({ cells }: CsvRow, column: Column): string {
    return (cells[this.#table.columns.indexOf(column)] ?? '').trim();
  }

  #figure(row: CsvRow, column: Column): number | null {
    return readFigure(this.#cell(row, column), this.#table.decimalComma);
  }
}

const emptyItem = { measure: null, unit: 'each', packSize: 1, taxPercent: null, wastePercent: 0, note: '' } as const;

const nowhere = projectOf([]);

function whyNot(
  kind: 'catalogueItem' | 'labourRate' | 'kit',
  fields: Readonly<Record<string, unknown>>,
): Message | null {
  return whyNotFields(nowhere, kind, null, fields)?.message ?? null;
}

const longestId = 200;

function whyNotId(id: string): Message | null {
  return id.length > longestId ? message('exchange.priceList.longId', { most: longestId }) : null;
}

function isYes(cell: string): boolean {
  return /^(yes|y|true|1)$/i.test(cell);
}

/** Takes a read list into the property: its rows replace those of the same id; `only` takes all others out. */
export function takePriceList({ items, kits, labour }: ReadPriceList, only = false): (project: Project) => Project {
  return (before) => {
    const project = withOwnPrices(before);
    const others = [...project.catalogueItem.values(), ...project.kit.values(), ...project.labourRate.values()];
    return putAll(only ? removeAll(project, others) : project, [...items, ...kits, ...labour]);
  };
}
