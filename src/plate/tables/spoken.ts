import type { FieldName } from '../reading.ts';

/** Words that are a value by themselves: the field, its value, the words (languages one after the other). */
export const SPOKEN: readonly (readonly [FieldName, number, string])[] = [
  [
    'phases',
    3,
    '3 ~ | 3 ~ Mot | 3 ~ Motor | 3 ~ Motore | 3 ~ Moteur | Mot 3~ | motor 3~ | motore 3~ | moteur 3~ | 3 phase | 3 PH | three phase | trifase | trifasico | triphase | 3 phasen',
  ],
  [
    'phases',
    3,
    'drehstrom | drehstrommotor | dreiphasen | trojfazowy | trifaze | uc fazli | 3 fazli | 3 fasi | 3 fas | 3 fase | driefasen | trifazat | trojfazovy | трехфазный',
  ],
  [
    'phases',
    1,
    '1 ~ | 1 ~ Mot | 1 ~ Motor | 1 ~ Motore | 1 ~ Moteur | Mot 1~ | motor 1~ | motore 1~ | moteur 1~ | 1 phase | 1 PH | single phase | monofase | monofasico | monophase | 1 phasen',
  ],
  [
    'phases',
    1,
    'einphasen | einphasenmotor | wechselstrommotor | jednofazowy | monofaze | tek fazli | 1 fazli | 1 fasi | 1 fas | 1 fase | eenfase | monofazat | jednofazovy | kondensatormotor | однофазный',
  ],
];
