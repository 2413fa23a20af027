import type { FieldName } from '../reading.ts';

/** Words that are a value by themselves: the field, its value, the words (languages one after the other). */
export const SPOKEN: readonly (readonly [FieldName, number, string])[] = [
  [
    'phases',
    3,
    '3~ | 3 ~ | three phase | 3 phase | 3-phase | 3-phase induction motor | three phase induction motor | three-phase | 3 PH | 3PH | 3Ph | drehstrom | drehstrommotor | dreiphasen | drehstrom-motor | trifase | trifasico | motore trifase | motor trifasico | motore asincrono trifase | asincrono trifase | triphase | moteur triphase | moteur asynchrone triphase | trojfazowy | silnik trojfazowy | silnik indukcyjny trojfazowy | trifaze | 3 fazli | uc fazli | 3 fasi | 3 faz | 3 fas | 3-fas | 3 fase | driefasen | 3~Mot | 3~ Mot. | Mot 3~ | motor 3~ | 3 fasig | motor trifasico de induccion | motor de inducao trifasico | motor asincrono trifasico | трехфазный',
  ],
  [
    'phases',
    1,
    '1~ | 1 ~ | single phase | 1 phase | 1-phase | single-phase | single phase motor | single phase induction motor | 1 PH | 1PH | 1Ph | einphasen | einphasenmotor | wechselstrom | wechselstrommotor | monofase | motore monofase | monofasico | motor monofasico | monophase | moteur monophase | jednofazowy | silnik jednofazowy | monofaze | 1 fazli | tek fazli | 1 fasi | 1 faz | 1 fase | 1-fas | eenfase | 1~Mot | 1~ Mot. | Mot 1~ | motor 1~ | motore asincrono monofase | asincrono monofase | kondensatormotor | однофазный',
  ],
];
