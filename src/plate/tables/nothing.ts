/** Words that look like values and are none. */
const NOTHING: readonly RegExp[] = [
  // terminals: U1, V2, L1, Z2, PE
  /^(?:[UVWLZ][1-6]|PE|T[1-9])$/,
  // ball bearings by ISO 15: 6205-2Z, 6306 ZZ/C3
  /^6[0-4]\d\d[-/. ]?(?:2?Z{1,2}|2?RS\d?|DDU?|VV|LLU|C3)[/-]?(?:C3)?$/i,
  /^(?:2?RS[RH1]?|2Z|ZZ|DDU|C[2-5])$/i,
  // mountings by IEC 60034-7: B3, IMB35, V1
  /^IM?[BV]\d{1,2}$|^B(?:3|5|14|34|35)$/i,
  // cooling by IEC 60034-6: IC411
  /^IC\d{2,4}$/i,
  // numbers of standards: 60034-1, IEC34, EN60034
  /^(?:IEC|EN|VDE|ISO|DIN|GB|JB|CEI|NF|BS|IS)\W?\w*\d{2,5}(?:[-/]\d+)*$/i,
  /^(?:60034|60335|60085|61800)(?:-\d+)*$/,
];

/** Whether a word is one of those that look like values and are none. */
export const isNothing = (text: string): boolean => NOTHING.some((pattern) => pattern.test(text));
