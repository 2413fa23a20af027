import type { AxisQuantity } from '../hints.ts';

/** What an axis may show that is no quantity of a fan curve we read. */
export type TitleQuantity = AxisQuantity | 'pressure' | 'other';

/**
 * Words of axis titles: what they mean, the words (lower case, accents taken off, the languages one after the other), and
 * how much they tell. Longer words win over shorter ones inside them. `pressure` is a pressure that may be static or total.
 */
export const TITLE_WORDS: readonly (readonly [TitleQuantity, number, string])[] = [
  [
    'static_pressure',
    1,
    'static pressure | fan static pressure | static press | static head | static suction | static vacuum',
  ],
  ['static_pressure', 1, 'statischer druck | statische druckerhohung | statische druckdifferenz | stat druck'],
  [
    'static_pressure',
    1,
    'pression statique | presion estatica | pressione statica | pressao estatica | prevalenza statica | press statique | press statica | presion est',
  ],
  [
    'static_pressure',
    1,
    'statische druk | statisk tryck | statisk trykk | statisk tryk | cisnienie statyczne | staattinen paine | statik basinc',
  ],
  [
    'static_pressure',
    0.8,
    'vacuum | suction | depression | unterdruck | depresion | depressione | negative pressure | onderdruk | podcisnienie',
  ],
  ['total_pressure', 1, 'total pressure | fan total pressure | total press | total head'],
  [
    'total_pressure',
    1,
    'gesamtdruck | totaldruck | gesamtdruckdifferenz | totaldruckerhohung | totaldruckdifferenz | gesamtdruckerhohung',
  ],
  [
    'total_pressure',
    1,
    'pression totale | presion total | pressione totale | pressao total | prevalenza totale | press totale | pres total',
  ],
  [
    'total_pressure',
    1,
    'totale druk | totaal druk | totaltryck | totaltrykk | totaltryk | cisnienie calkowite | kokonaispaine | toplam basinc',
  ],
  [
    'other',
    1,
    'velocity pressure | dynamic pressure | dynamischer druck | pression dynamique | presion dinamica | pressione dinamica',
  ],
  [
    'pressure',
    0.7,
    'pressure | druck | druckerhohung | druckdifferenz | pression | presion | pressione | pressao | druk | tryck | trykk | tryk | cisnienie | paine | basinc | pressure rise | pressure difference | head | prevalenza',
  ],
  [
    'flow',
    1,
    'volume flow | volume flow rate | air flow | airflow | flow rate | volumetric flow | flow | air volume | inlet volume | air quantity | air delivery | delivered air | volume of air | air flow rate | suction volume',
  ],
  ['flow', 0.85, 'volume | capacity | delivery | discharge | quantity'],
  [
    'flow',
    1,
    'volumenstrom | luftmenge | fordermenge | fordervolumen | luftstrom | durchfluss | ansaugvolumen | luftleistung | luftvolumenstrom | forderstrom',
  ],
  [
    'flow',
    1,
    'debit | debit d air | debit volumique | debit volume | caudal | caudal de aire | portata | portata d aria | portata volumetrica | vazao | caudal volumetrico',
  ],
  [
    'flow',
    1,
    'debiet | luchtdebiet | volumestroom | luchthoeveelheid | luftflode | flode | luftmengde | luftmaengde | volumenstrom | wydajnosc | strumien objetosci | przeplyw | ilmavirta | debi | hava debisi',
  ],
  [
    'shaft_power',
    1,
    'shaft power | power at shaft | absorbed power | brake power | brake horsepower | brake horse power | fan power | power absorbed | impeller power | power input | input power | horsepower | power consumption',
  ],
  ['shaft_power', 0.9, 'power'],
  [
    'shaft_power',
    1,
    'wellenleistung | leistungsbedarf | antriebsleistung | leistungsaufnahme | kraftbedarf | leistung an der welle',
  ],
  ['shaft_power', 0.9, 'leistung'],
  [
    'shaft_power',
    1,
    'puissance absorbee | puissance a l arbre | puissance | potencia absorbida | potencia en el eje | potencia | potenza assorbita | potenza all albero | potenza | potencia absorvida | potencia no eixo',
  ],
  [
    'shaft_power',
    1,
    'asvermogen | opgenomen vermogen | vermogen | axeleffekt | effektbehov | akseleffekt | moc na wale | moc | akseliteho | teho | mil gucu',
  ],
  ['efficiency', 1, 'efficiency | total efficiency | static efficiency | fan efficiency | mechanical efficiency | eff'],
  [
    'efficiency',
    1,
    'wirkungsgrad | gesamtwirkungsgrad | rendement | rendimiento | rendimento | eficiencia | verkningsgrad | virkningsgrad | sprawnosc | hyotysuhde | verim',
  ],
  [
    'other',
    1,
    'sound power | sound pressure | noise | schalldruck | schallleistung | schallpegel | bruit | ruido | rumore | geluid | sound level',
  ],
  [
    'other',
    1,
    'current | stromaufnahme | courant | corriente | corrente | outlet velocity | air velocity | velocity | geschwindigkeit | vitesse | velocidad | velocita',
  ],
  ['other', 0.9, 'speed | drehzahl | time | temperature | opening'],
];

/** Signs that stand for a quantity, where no word says it; capitals count. */
export const TITLE_SIGNS: readonly (readonly [TitleQuantity, string])[] = [
  [
    'static_pressure',
    'SP | ps | Ps | pS | PS | pst | Pst | pstat | Pstat | psf | Psf | psF | PsF | pSF | pfs | pFS | ΔpsF | ApsF | Δps | Δpst | Δpstat | Apst | Aps | Apstat | FSP | hs | pe',
  ],
  [
    'total_pressure',
    'TP | pt | Pt | pT | ptot | Ptot | ptF | PtF | ptf | Δpt | Δptot | Apt | Aptot | FTP | pF | pf | Δptf | ht',
  ],
  ['flow', 'Q | V | qv | qV | V̇ | Qv | QV | Vdot | L'],
  ['shaft_power', 'P | Pw | PW | P2 | PL | N | BHP | bhp | Pe | PR | Pr'],
  ['efficiency', 'η | ηt | ηs | ηtot | n% | Eff | nt | ηst'],
  ['pressure', 'p | Δp | Ap | dp'],
];
