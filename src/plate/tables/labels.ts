import type { FieldName } from '../reading.ts';

/**
 * Words that stand beside values: what they name, how surely (0..1, where the words stand alone), and the words themselves,
 * a row for each language or two. `other` names what nobody asked for, so that its value is not taken for something else.
 * A word may stand in several rows. Accents, blanks and full stops do not count; other scripts are matched by what a
 * reader of Latin letters makes of them (`asLatin`).
 */
export const LABELS: readonly (readonly [FieldName | 'other' | 'input' | 'shaft', number, string])[] = [
  // power
  [
    'ratedPower_W',
    0.95,
    'motor power | rated power | power | output | rated output | motor output | horsepower | motor rating | rated hp | shaft power | power output | absorbed power | power at shaft | motor kw | motor hp',
  ],
  [
    'ratedPower_W',
    0.95,
    'leistung | nennleistung | motorleistung | abgabe | abgabeleistung | wellenleistung | antriebsleistung | bemessungsleistung | kraftbedarf',
  ],
  [
    'ratedPower_W',
    0.95,
    'potenza | potenza motore | potenza resa | potenza nominale | pot | pot motore | potenza assorbita | potenza installata',
  ],
  [
    'ratedPower_W',
    0.95,
    'puissance | puissance utile | puissance moteur | puissance nominale | puiss | puiss moteur | puissance absorbee | puis',
  ],
  [
    'ratedPower_W',
    0.95,
    'potencia | potencia motor | potencia nominal | potencia util | pot motor | potencia do motor | potencia absorbida | potencia instalada | potencia absorvida',
  ],
  [
    'ratedPower_W',
    0.95,
    'moc | moc silnika | moc znamionowa | guc | motor gucu | anma gucu | мощность | мощность двигателя | vermogen | motorvermogen | effekt | motoreffekt | ydelse | teho | vykon | vykon motoru | prikon | teljesitmeny | putere | снага | моћност | moc na wale',
  ],
  ['ratedPower_W', 0.5, 'P | Pn | P2 | PN | Pm | P mot | P1 | Pw | N'],
  [
    'input',
    0.95,
    'input | power input | input power | rated input | aufnahme | leistungsaufnahme | puissance absorbee | potenza assorbita | potencia absorbida | consumption | power consumption | opgenomen vermogen | pobor mocy | potencia absorvida | P1 | watts input | input watts | nennaufnahme | max input',
  ],
  ['shaft', 0.9, 'output | rated output | abgabe | puissance utile | potenza resa | P2 | shaft power'],
  // volts, amps, hertz, phases
  [
    'voltage_V',
    0.95,
    'volts | volt | voltage | rated voltage | supply | supply voltage | spannung | nennspannung | tensione | tensione nominale | tension | tension nominale | voltaje | tensao | tensao nominal | napiecie | napiecie znamionowe | gerilim | anma gerilimi | напряжение | spanning | spanning | jannite | spanding | spenning | napeti | feszultseg | tensiune | voltios | voltios',
  ],
  ['voltage_V', 0.4, 'U | Un | V | UN | Volt'],
  [
    'current_A',
    0.95,
    'amps | amp | amperes | current | rated current | full load amps | full load current | fl amps | FLA | F.L.A. | FLC | strom | nennstrom | bemessungsstrom | corrente | corrente nominale | courant | courant nominal | intensite | corriente | corriente nominal | intensidad | corrente nominal | prad | prad znamionowy | akim | anma akimi | ток | stroom | strom | virta | proud | aramerosseg | curent | stromaufnahme | amperios | amperaje',
  ],
  ['current_A', 0.4, 'I | In | IN | I nom | A'],
  [
    'frequency_Hz',
    0.95,
    'hertz | cycles | frequency | freq | frequenz | nennfrequenz | frequenza | frequence | frecuencia | frequencia | czestotliwosc | frekans | частота | frequentie | frekvens | taajuus | frekvence | kmitocet | frekvencia | frecventa | Per | periodes | cyc | ciclos',
  ],
  ['frequency_Hz', 0.4, 'f | fn'],
  [
    'phases',
    0.95,
    'phase | phases | PH | phasen | phasenzahl | fasi | fasen | fases | fazy | faz | liczba faz | faser | vaihe | faze | ф | фаз | число фаз | nr of phases | no of phases | faz sayisi',
  ],
  // power factor, efficiency
  [
    'powerFactor',
    0.97,
    'cosφ | cos φ | cos phi | power factor | P.F. | PF | pwr factor | leistungsfaktor | leistungsf | cosfi | cos fi | facteur de puissance | fattore di potenza | factor de potencia | fator de potencia | fp | wspolczynnik mocy | guc faktoru | arbeidsfactor | cos o | cos p | cosp | coso | cos q | cosq | cos',
  ],
  [
    'efficiency',
    0.95,
    'eff | efficiency | nom eff | nominal efficiency | nema nom eff | nom efficiency | FL eff | full load eff | rendement | rend | wirkungsgrad | rendimento | rendimiento | eficiencia | sprawnosc | verim | КПД | virkningsgrad | verkningsgrad | hyotysuhde | ucinnost | hatasfok | guaranteed efficiency | min eff',
  ],
  ['efficiency', 0.45, 'η | eta | ren'],
  ['efficiency', 0.8, 'η% | n% | eta%'],
  // eta, as a reader of Latin letters sees it
  ['efficiency', 0.3, 'n'],
  // speed
  [
    'speed_rpm',
    0.95,
    'speed | rpm | r.p.m. | r/min | min-1 | rated speed | full load speed | FL rpm | fan speed | motor speed | speed rpm | max speed | drehzahl | nenndrehzahl | umdrehungen | umdr | touren | giri | giri/min | numero giri | n giri | velocita | vitesse | vitesse de rotation | tours | trs/min | velocidad | velocidade | revoluciones | rotacao | rotacoes | predkosc | predkosc obrotowa | obroty | devir | hiz | devir sayisi | частота вращения | скорость | об/мин | toerental | omwentelingen | varvtal | omdrejninger | turtall | pyorimisnopeus | otacky | fordulatszam | turatie | vel nominal | drehz | RPM | REV/MIN | revs | velocidad de giro',
  ],
  ['speed_rpm', 0.4, 'n | nn | U/min'],
  // service factor, letters
  [
    'serviceFactor',
    0.97,
    'S.F. | SF | service factor | serv factor | SER.F. | ser factor | servicefactor | factor de servicio | F.S. | fator de servico | facteur de service | fattore di servizio | svc factor | serv.fact.',
  ],
  [
    'codeLetter',
    0.9,
    'code | kva code | code letter | KVA | locked rotor code | LR code | cod | codigo | letra codigo | code ltr',
  ],
  [
    'designLetter',
    0.9,
    'des | design | nema design | design letter | DES. | dsgn | diseno | cat | categoria | nema des',
  ],
  [
    'insulationClass',
    0.97,
    'ins cl | insulation class | insul class | ins class | insulation | ins | insul | class ins | INSUL. | insul cl | INS.CL. | thermal class | temp class | class of insulation',
  ],
  [
    'insulationClass',
    0.97,
    'isol kl | iso kl | isolierstoffklasse | isolationsklasse | isoklasse | warmeklasse | isolierklasse | isolation | wkl | th cl | thcl | Th.Cl. | therm class | is kl | Isol.-Kl.',
  ],
  [
    'insulationClass',
    0.97,
    'classe isol | classe isolation | classe d isolation | cl isol | isol cl | is cl | isol | classe isolamento | classe di isolamento | isolamento | clase aislamiento | clase de aislamiento | aislamiento | aisl | cl aisl | clase aisl | aisl clase | isolacao | classe isolacao | isol classe | is classe | ISO.CL. | I.CL. | I cl',
  ],
  [
    'insulationClass',
    0.97,
    'klasa izolacji | izolacja | klasa izol | izol | kl izol | izolasyon sinifi | izolasyon | izol sinifi | класс изоляции | изоляция | кл изол | isolatieklasse | isolatie | eristysluokka | trida izolace | tr izolace | szig oszt | clasa izolatie | isolasjonsklasse | isolationsklass',
  ],
  ['insulationClass', 0.5, 'class | cl | klasse | classe | clase | klasa | sinif | кл | kl'],
  [
    'ipRating',
    0.95,
    'IP | protection | enclosure IP | schutzart | protezione | grado di protezione | grado protezione | indice de protection | degre de protection | proteccion | grado de proteccion | grau de protecao | protecao | stopien ochrony | ochrona | koruma | koruma sinifi | koruma derecesi | степень защиты | beschermingsgraad | protection class | ingress protection | degree of protection | kryti | vedettseg',
  ],
  [
    'efficiencyClass',
    0.95,
    'IE code | IE class | IE klasse | klasa IE | trida IE | IE sinifi | clase IE | klasse IE | effizienzkl | eff kl | IE | efficiency class | eff class | wirkungsgradklasse | effizienzklasse | classe IE | classe rendement | classe di efficienza | classe efficienza | clase eficiencia | clase de eficiencia | klasa sprawnosci | verim sinifi | класс энергоэффективности | classe de rendimento | nivel de eficiencia | IE cl',
  ],
  [
    'duty',
    0.95,
    'duty | duty type | betr | betr art | druh zatizeni | zatizeni | cis rodzaj | rodz pracy | reg trabalho | regime trab | serv tipo | tipo servizio | time rating | rating | betriebsart | servizio | service | servicio | regime | regime de servico | rodzaj pracy | praca | calisma | calisma rejimi | isletme | режим работы | режим | bedrijfssoort | serv | time rat | operation | hours | reg s | drift',
  ],
  // frame, serial, year, mass
  [
    'frameSize',
    0.95,
    'frame | frame size | wielk mech | wielkosc mech | baugr | osova vyska | velikost | rozmer | boyut | bouwgr | bouwvorm | FR | frame no | baugroesse | baugrosse | baugroBe | bg | gehause | carcassa | grandezza | carcasse | taille | carcasa | armazon | carcaca | wielkosc mechaniczna | wielkosc | govde | govde buyuklugu | габарит | bouwgrootte | frame type | hauteur d axe | tamano',
  ],
  [
    'serialNumber',
    0.95,
    'serial no | serial number | serial | SER.NO. | S/N | ser no | sn | s no | serien nr | seriennummer | serien-nr | fabriknummer | fabrik nr | fabr nr | fabrikations nr | masch nr | maschinen nr | motor nr | fertigungs nr | fabrik-nr. | F.-Nr. | werk nr | werknummer | mach no | motor no | fan no | manufacturing no | mfg no | product no | ident no | machine no',
  ],
  [
    'serialNumber',
    0.95,
    'matricola | n matricola | matr | numero di serie | n serie | nr serie | N° serie | numero de serie | no de serie | n de serie | no serie | num serie | N.º serie | numero serie | n fabricacion | n de fabricacion | n fabrication | n de fabrication | numero de fabrication | no de fab | matricule | n serial',
  ],
  [
    'serialNumber',
    0.95,
    'nr fabryczny | numer fabryczny | nr fabr | nr seryjny | numer seryjny | seri no | seri numarasi | imalat no | заводской номер | зав № | зав номер | серийный номер | serienummer | serie nr | fabricagenummer | serienr | tillv nr | sarjanumero | valmistusnumero | vyrobni cislo | v c | vyr cislo | gyartasi szam | gy szam | serie no | tillverkningsnr',
  ],
  ['serialNumber', 0.6, 'No. | Nr. | N° | No | № | Nr | N.'],
  [
    'year',
    0.95,
    'year | year of manufacture | yr | mfg year | year built | built | baujahr | bj | herstelljahr | jahr | anno | anno di costruzione | anno costr | annee | annee de fabrication | annee de construction | ano | ano de fabricacion | ano fabricacion | ano de fabricacao | fabricacion | rok | rok produkcji | rok prod | rok budowy | yil | imal yili | imalat yili | uretim yili | год | год выпуска | г в | bouwjaar | jaar | ar | byggear | tillverkningsar | valmistusvuosi | vuosi | rok vyroby | gyartasi ev | an fabricatie | year mfd | produced | manufactured | date | date code | mfd | mfg date | datum | data | fecha | data produkcji | tarih',
  ],
  [
    'mass_kg',
    0.95,
    'mass | weight | wt | net weight | approx weight | masse | gewicht | nettogewicht | peso | massa | poids | poids net | masa | ciezar | waga | agirlik | kutle | масса | вес | vikt | vaegt | vekt | paino | hmotnost | tomeg | greutate | poid | peso neto | netto',
  ],
  // temperatures
  [
    'ambient_C',
    0.95,
    'amb | ambient | ambient temp | umgeb temp | umgebungstemp | umgeb | umg | temp umg | T amb max | amb temp max | t otocz | temp otocz | teplota okoli | T okoli | teplota okolia | temp ambiente | T ambiente | temp amb max | T ambiante | temp ambiante | omgevingstemp | omg temp | ortam sic | omgivningstemp | kornyezeti hom | temp mediu | okoli | max amb | max ambient | amb temp | AMB. | umgebung | umgebungstemperatur | umg temp | temp amb | temperature ambiante | temperatura ambiente | temperatura ambiente max | tamb | T amb | ta | t umg | kuhlmitteltemp | temp otoczenia | temperatura otoczenia | ortam sicakligi | ortam | omgevingstemperatuur | ambiente | max amb temp | KT',
  ],
  ['ambient_C', 0.4, 'temp | temperature | temp max | max temp'],
  ['airTemperature_C', 0.45, 'temp | temperature | temp max | max temp | t'],
  [
    'airTemperature_C',
    0.95,
    'air temp | air temp max | temp ar | temp czynnika | temperatura czynnika | temp medium | gas temp max | temp vzduchu | teplota vzduchu | teplota media | luchttemp | luft temp max | lufttemp | fordertemp | medium temp max | temp de l air | temp aire max | temp ar max | temp gas | temp gaz | air temperature | max air temp | gas temp | gas temperature | operating temp | operating temperature | medium temp | max temp | inlet temp | lufttemperatur | luft temp | medientemperatur | fordermedium temp | max lufttemperatur | betriebstemperatur | temp max | temperatura aria | temp aria | temp max aria | temperature air | temperature de l air | temp air | temperatura del aire | temperatura aire | temp aire | temperatura ar | temp do ar | temperatura powietrza | temp powietrza | hava sicakligi | hava sic | температура воздуха | luchttemperatuur | temp fluido | medium | temp maks | max temperature | temp max aire | tmax | t max | t luft',
  ],
  // capacitors
  [
    'capacitor_uF',
    0.9,
    'C | cap | capacitor | run cap | run capacitor | CR | C run | condensator | kondensator | betriebskondensator | CB | C B | condensatore | condensateur | condensador | cond | kondensator | kondansator | конденсатор | cond perm | capac | capacitance | kond | cap run | CP | MFD | cond marcha | kond pracy | daimi kondansator | condensatore marcia | permanent capacitor | capacitor de marcha',
  ],
  [
    'startCapacitor_uF',
    0.9,
    'start cap | start capacitor | starting capacitor | CS | C start | CA | C A | C st | anlaufkondensator | anlasskondensator | cap start | cond start | condensador de arranque | cond arranque | condensatore di avviamento | cond avv | condensateur de demarrage | cond dem | kond rozruchowy | capacitor de partida | cond partida | ilk hareket kondansatoru | C avv | C dem | C arr | пусковой',
  ],
  ['capacitorVoltage_V', 0.85, 'Vc | cap volts | cap voltage | capacitor voltage | UC | Uc | cap V'],
  // blower
  [
    'flow_m3_s',
    0.95,
    'air flow | airflow | volume flow | flow | flow rate | capacity | air volume | volume | max flow | max airflow | air delivery | discharge | free air | Flow max | max flow rate | CFM | volumenstrom | luftmenge | fordermenge | luftleistung | fordervolumen | forderstrom | durchfluss | luftvolumen | luftstrom | volumenstr | max luftmenge',
  ],
  [
    'flow_m3_s',
    0.95,
    'portata | portata aria | portata d aria | portata max | debit | debit d air | debit air | debit max | caudal | caudal de aire | caudal max | caudal aire | vazao | vazao de ar | vazao max | wydajnosc | wydatek | przeplyw | debi | hava debisi | debisi | расход | производительность | подача | debiet | luchthoeveelheid | luftflode | luftmaengde | luftmengde | ilmamaara | ilmavirta | vzduchovy vykon | prutok | legszallitas | debit aer',
  ],
  ['flow_m3_s', 0.5, 'Q | qv | V̇ | Qv | Vmax | Qmax | Q max'],
  [
    'pressure_Pa',
    0.95,
    'pressure | static pressure | total pressure | stat pressure | S.P. | T.P. | SP | fan static pressure | vacuum | vac | vac max | max vacuum | vacuum max | suction | max pressure | pressure rise | max suction | sealed vacuum | head | druck | gesamtdruck | statischer druck | totaldruck | pressung | unterdruck | max unterdruck | gesamtpressung | druckdifferenz | druckerhohung | stat druck | ges druck | gesamtdruckdifferenz | stat press | total press',
  ],
  [
    'pressure_Pa',
    0.95,
    'pressione | pressione tot | pressione totale | pressione statica | press tot | press stat | prevalenza | depressione | depressione max | vuoto | pression | pression totale | pression statique | depression | presion | presion total | presion estatica | depresion | vacio | pressao | pressao total | pressao estatica | vacuo | cisnienie | cisnienie calkowite | cisnienie statyczne | podcisnienie | spietrzenie | basinc | toplam basinc | statik basinc | vakum | давление | полное давление | напор | разрежение | druk | totale druk | onderdruk | tryck | totaltryck | tryk | undertryck | paine | tlak | celkovy tlak | podtlak | nyomas | presiune',
  ],
  ['pressure_Pa', 0.5, 'p | Δp | pt | ps | dp | pst | ptot | Δpt | H | pmax | pges'],
  [
    'wheelDiameter_m',
    0.95,
    'wheel dia | wheel diameter | impeller dia | impeller diameter | impeller | wheel | rotor dia | rotor diameter | fan dia | fan wheel | imp dia | imp Ø | rad Ø | Rad-Ø | imp | impeller Ø | wheel Ø | laufrad | laufrad Ø | laufraddurchmesser | laufrad durchmesser | raddurchmesser | laufraddurchm | girante | girante Ø | diametro girante | diam girante | turbine | diametre roue | roue | diametre turbine | roue Ø | turbine Ø | rodete | diametro rodete | rodete Ø | turbina | diam turbina | rotor | rotor Ø | diametro do rotor | wirnik | srednica wirnika | wirnik Ø | cark | cark capi | fan capi | диаметр колеса | рабочее колесо | waaier | waaier Ø | waaierdiameter | flakthjul | hjul | siipipyora | obezne kolo',
  ],
  ['wheelDiameter_m', 0.4, 'Ø | D | dia | diam | diameter | durchmesser | D2'],
  // not asked for
  [
    'other',
    0.97,
    'type | model | mod | model no | mod no | cat no | catalog no | cat number | catalogue no | typ | modell | tipo | modello | fan type | modele | modelo | serie | tip | тип | модель | part no | p/n | item no | item | art nr | artikel nr | art no | order no | auftrags nr | bestell nr | style | spec | job no | article | ref | reference | codice | code article | id no | fan model |  tyyppi | tipus | motor type | kenn nr | malli | product',
  ],
  [
    'other',
    0.95,
    'encl | enclosure | encl. | brg | bearings | bearing | brg DE | D.E. | DE brg | opp end brg | shaft end brg | ODE | DE | NDE | N.D.E. | drive end | lager | lager DE | cuscinetti | roulements | roulement | rodamientos | rolamentos | lozyska | rulman | подшипник | lagers | mancal | rolam | mounting | bauform | IM | forma | forme | shape | grease | fett | graisse | lubricant | IM B3 | montage | mtg | usable at | therm prot | thermal protection | thermally protected | cooling | IC | kuhlung',
  ],
  [
    'other',
    0.9,
    'poles | pole | polzahl | poli | polos | poles nb | bieguny | kutup | полюсов | standard | standards | norm | norma | normes | made in | phone | tel | fax | altitude | alt | connection | conn | schaltung | anschluss | collegamento | couplage | conexion | ligacao | polaczenie | baglanti | соединение | rotor V | rotor A | LRA | max KVAR | torque | moment | noise | sound | rotation | drehrichtung | shaft | welle | shaft dia | density | dichte | densita | densite | air density | Ia/In | IA/IN | Ip/In | inertia | GD2 | wiring | test | date of test | po box | telefon | tlf | low voltage | high voltage | max rpm | gost | ГОСТ | temp rise | rise | standart | blade | blades | schaufeln | thrust',
  ],
  [
    'other',
    0.97,
    'VDE | EN | IEC | DIN | ISO | GB/T | JB/T | CEI | NBR | UNE | UNI | PN | CSN | GOST | ГОСТ | NEMA MG1 | IEC/EN | DIN EN | EN 60034',
  ],
];
