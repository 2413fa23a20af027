import { unitByName, unitCalled } from '../../units/names.ts';
import type { Quantity } from '../../units/quantities.ts';
import type { Unit } from '../../units/units.ts';

/**
 * Units as they come out of a reading: a raised figure is read as a quote or a letter, an l as a stroke or an I, a foot's
 * 2 as a comma. Each: what is read, without blanks and in small letters, and the unit's name.
 */
const AS_READ: readonly (readonly [RegExp, string])[] = [
  [/^m.{0,2}[/il1]?h(r|our)?$/, 'm³/h'],
  [/^m.{0,2}\/min$/, 'm³/min'],
  [/^m[3*°'’"”®?³>]{1,2}[/il1]s(ec)?$/, 'm³/s'],
  [/^(cfm|ft.{0,2}\/min)$/, 'CFM'],
  [/^([1li!]?\/|[1li/][/il1])s(ec)?$/, 'L/s'],
  [/^[1li/]\/min$/, 'L/min'],
  [/^(mm?\/s(ec)?|m[il1]s)$/, 'm/s'],
  [/^(fpm|ft\/min)$/, 'ft/min'],
  [/^mm(w[gscq6]|h.{0,2}|ce|ca|k?sv|vp|vs|ss|dea|deagua)$/, 'mm water'],
  [/^(in|["”″])(w[gcs6]|h.{0,2}[o0q])$/, 'in water'],
  [/^cm(w[gcs6]|h.{0,2}[o0q]|ce|ca)$/, 'cm water'],
  [/^(r?pm|upm|tpm|ppm|min.{0,3}|d\/dk?|t\/mn|tr\/mn|r\/m|giri\/1.)$/, 'rpm'],
  [/^(1|i|l|r|rev|u|t|tr|giri|g|obr|ot|omw|varv|v|o|omdr|rot|dev|d)\/(min|dk)$/, 'rpm'],
  [/^(pa|pascal)$/, 'Pa'],
  [/^dapa$/, 'daPa'],
  [/^(mbar|mb)$/, 'mbar'],
  [/^hpa$/, 'hPa'],
  [/^w{1,3}$/, 'W'],
  [/^(a|amps?|ampere)$/, 'A'],
  [/^(%|[°o9]\/o|pct|percent)$/, '%'],
  [/^(v{1,2}|volts?)$/, 'V'],
  [/^[hn#][z23]$/, 'Hz'],
  [/^[°ºo*'’]?c$/, '°C'],
];

const compact = (text: string): string =>
  text
    .normalize('NFKC')
    .toLowerCase()
    .replaceAll(/[\s.,·_()[\]{}]/g, '')
    .replaceAll(/[⁄|]/g, '/');

/** The unit a piece of text is, by its exact spellings first, then by what they are misread as; null where it is none. */
export function unitAsRead(text: string, quantity?: Quantity): Unit | null {
  const key = compact(text);
  if (!key) return null;
  const named = unitByName(text.trim(), quantity);
  if (named && (quantity || key.length > 1 || /^[avwm%]$/.test(key))) return named;
  if (key === 'kw') return unitCalled('kW');
  const found = AS_READ.find(([pattern]) => pattern.test(key));
  if (!found) return null;
  const unit = unitCalled(found[1]);
  return quantity && unit.quantity !== quantity ? null : unit;
}
