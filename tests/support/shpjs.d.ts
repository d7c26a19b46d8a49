/** The one call of shpjs that is used; it has no types of its own. */
declare module 'shpjs' {
  export default function shp(zip: Uint8Array): Promise<unknown>;
}
