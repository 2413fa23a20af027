import { plainName } from './alike.ts';
import { asLatin } from './cyrillic.ts';
import type { ColumnQuantity, HeadQuantity } from '../quantities.ts';

/** Names parted by strokes; Cyrillic ones as Latin letters look like them. */
const list = (names: string): string[] => names.split('|').map((name) => plainName(asLatin(name)));

/**
 * What people write over a column, by quantity: English, German, French, Italian, Spanish, Portuguese, Dutch, Polish,
 * Czech, Turkish, Swedish, Norwegian, Danish, Finnish, Russian. Accents, capitals, points and blanks do not count. Signs of formulas
 * stand last.
 */
export const COLUMN_NAMES: Record<ColumnQuantity, readonly string[]> = {
  opening: list(
    'opening no|opening number|opening|no|nr|point|test point|test no|point no|measuring point|reading|reading no|run|step|position|pos|row|item|messpunkt|messung|messung nr|lfd nr|punkt|punkt nr|stellung|oeffnung nr|offnung nr|point de mesure|no essai|essai|mesure|mesure no|repere|punto|punto n|prova|prova n|n prova|misura|num|punto de medida|prueba|medida|ensayo|ponto|ponto n|medicao|ensaio|meting|meetpunt|meting nr|lp|pomiar|pomiar nr|punkt pomiarowy|nr pomiaru|mereni|bod|cislo|c mereni|olcum|olcum no|sira|sira no|nokta|matpunkt|matning|malepunkt|maaling|maling|mittaus|piste|n|ne|n2|n9|n#|#|точка|номер|опыт|замер|режим',
  ),
  opening_pct: list(
    'damper open|damper|damper opening|opening|open|gate|gate open|gate opening|slider|slide open|valve|valve opening|shutter|throttle|schieber|schieber offen|klappe|klappe offen|klappenstellung|klappenoffnung|schieberstellung|drosselklappe|drossel|offnung|ouverture|registre|volet|ouverture volet|ouverture registre|clapet|vanne|apertura|serranda|apertura serranda|saracinesca|valvola|compuerta|apertura compuerta|abertura|registro|abertura registo|damper aberto|klep|klepstand|schuif|schuifstand|opening klep|kleppositie|przepustnica|otwarcie|otwarcie przepustnicy|zasuwa|klapka|otevreni|otevreni klapky|klapa|aciklik|klape|klape acikligi|damper acikligi|kapak|spjall|spjallage|oppning|spjeld|spjaeld|abning|apning|pelti|avaus|открытие|шибер|заслонка|задвижка|клапан',
  ),
  orificeDiameter_m: list(
    'orifice|orifice dia|orifice diameter|orifice plate|hole|hole dia|hole diameter|plate|plate bore|bore|nozzle|blende|blendendurchmesser|blende d|duse|dusendurchmesser|loch|lochdurchmesser|bohrung|diaphragme|diametre diaphragme|orifice diametre|trou|diametre trou|diaframma|foro|diametro foro|orifizio|diafragma|orificio|diametro orificio|agujero|placa|furo|diametro furo|meetflens|gat|gatdiameter|boring|opening dia|kryza|srednica kryzy|otwor|srednica otworu|zwezka|dysza|clona|prumer clony|otvor|delik|delik capi|orifis|orifis capi|meme|strypflans|hal|haldiameter|strypning|blaende|hull|hul|kuristus|reika|диафрагма|отверстие|шайба|сопло',
  ),
  staticPressure_Pa: list(
    'static pressure|static|static press|stat press|stat pressure|suction|vacuum|vac|depression|pressure|differential pressure|statischer druck|stat druck|statdruck|statik druck|unterdruck|druck|vakuum|sog|differenzdruck|pression statique|press stat|pression stat|p statique|depression|vide|pression|pressione statica|press statica|p statica|depressione|vuoto|pressione|aspirazione|presion estatica|presion est|p estatica|presion|depresion|vacio|pressao estatica|press estatica|pressao|depressao|vacuo|statische druk|stat druk|onderdruk|druk|vacuum|cisnienie statyczne|cisn statyczne|cisn stat|podcisnienie|cisnienie|proznia|staticky tlak|stat tlak|podtlak|tlak|statik basinc|stat basinc|vakum|basinc|emis|statiskt tryck|stat tryck|undertryck|tryck|statisk trykk|statisk tryk|undertrykk|undertryk|staattinen paine|alipaine|paine|ps|pst|pstat|p st|p stat|sp|dp|dp stat|delta p|p|статическое давление|стат давление|стат|разрежение|давление|рст',
  ),
  velocityPressure_Pa: list(
    'velocity pressure|velocity press|vel pressure|vel press|dynamic pressure|dynamic|dyn pressure|dyn press|pitot|pitot pressure|dynamischer druck|dyn druck|staudruck|geschwindigkeitsdruck|pression dynamique|press dyn|pression dyn|p dynamique|pressione dinamica|press dinamica|p dinamica|presion dinamica|presion din|p dinamica|presion de velocidad|pressao dinamica|press dinamica|dynamische druk|dyn druk|stuwdruk|cisnienie dynamiczne|cisn dynamiczne|cisn dyn|dynamicky tlak|dyn tlak|dinamik basinc|hiz basinci|din basinc|dynamiskt tryck|dyn tryck|dynamisk trykk|dynamisk tryk|dynaaminen paine|pv|pd|pdyn|p dyn|p d|vp|dp pitot|динамическое давление|дин давление|динам давление|скоростной напор|рд',
  ),
  velocity_m_s: list(
    'velocity|air velocity|air speed|air vel|vel|wind speed|anemometer|luftgeschwindigkeit|geschwindigkeit|luftgeschw|geschw|stromungsgeschwindigkeit|vitesse air|vitesse de l air|vitesse d air|vitesse|velocita aria|velocita dell aria|velocita|vel aria|velocidad aire|velocidad del aire|velocidad|velocidade do ar|velocidade ar|velocidade|luchtsnelheid|snelheid|stroomsnelheid|predkosc powietrza|predkosc|predkosc przeplywu|rychlost|rychlost vzduchu|hava hizi|hiz|lufthastighet|lufthastighed|hastighet|hastighed|ilmannopeus|ilman nopeus|nopeus|v|c|w|скорость воздуха|скор воздуха|скорость',
  ),
  flow_m3_s: list(
    'flow|air flow|airflow|flow rate|volume|volume flow|air volume|discharge|volumenstrom|luftmenge|luftstrom|fordermenge|vol strom|durchfluss|debit|debit d air|debit air|debit volumique|portata|portata aria|portata d aria|caudal|caudal de aire|caudal aire|flujo|vazao|caudal de ar|caudal ar|fluxo|debiet|luchtdebiet|luchthoeveelheid|luchtvolume|volumestroom|przeplyw|wydajnosc|strumien|strumien objetosci|prutok|prutok vzduchu|objem|debi|hava debisi|akis|luftflode|flode|volymflode|luftmengde|luftmaengde|volumstrom|luftstrom|ilmavirta|tilavuusvirta|q|v punkt|qv|расход|расход воздуха|подача|производительность',
  ),
  current_A: list(
    'current|amps|ampere|amperes|amp|motor current|line current|strom|stromaufnahme|motorstrom|courant|intensite|courant absorbe|ampere|corrente|assorbimento|corrente assorbita|corriente|intensidad|consumo|corrente absorvida|amperagem|amperaje|stroom|motorstroom|stroomsterkte|prad|prad silnika|natezenie|pobor pradu|proud|akim|motor akimi|strom motor|motorstrom|strom|virta|i|im|ток|ток двигателя|сила тока',
  ),
  speed_rpm: list(
    'speed|rpm|revs|fan speed|motor speed|rotational speed|shaft speed|drehzahl|umdrehungen|motordrehzahl|vitesse|vitesse de rotation|vitesse rotation|regime|tours|giri|numero giri|n giri|velocita di rotazione|regime di rotazione|velocita|velocidad|velocidad de giro|vueltas|revoluciones|rotacao|rotacoes|velocidade|velocidade de rotacao|toerental|toeren|snelheid|obroty|predkosc obrotowa|predkosc|otacky|devir|devir sayisi|hiz|varvtal|varv|turtall|omdreiningstall|omdrejninger|omdrejningstal|hastighed|kierrosluku|kierrokset|nopeus|n|rpm|обороты|частота вращения|об мин',
  ),
  inputPower_W: list(
    'power|input|input power|power input|watts|electrical power|elec power|motor power|leistung|leistungsaufnahme|aufnahme|wirkleistung|el leistung|aufgenommene leistung|puissance|puissance absorbee|puiss absorbee|puissance elec|potenza|potenza assorbita|pot assorbita|potencia|potencia absorbida|pot absorbida|potencia absorvida|pot absorvida|consumo|vermogen|opgenomen vermogen|opname|moc|moc pobierana|pobor mocy|moc wejsciowa|prikon|vykon|guc|cekilen guc|giris gucu|effekt|ineffekt|tilfort effekt|optagen effekt|optagen effekt|teho|ottoteho|p|pel|p el|p1|pin|мощность|потребляемая мощность|потр мощность',
  ),
};

/** What people write before the values in the head of a sheet. */
export const HEAD_NAMES: Record<HeadQuantity, readonly string[]> = {
  voltage_V: list(
    'voltage|volts|volt|mains|mains voltage|supply|supply voltage|line voltage|line|spannung|netzspannung|netz|betriebsspannung|tension|reseau|tension reseau|alimentation|tensione|rete|tensione di rete|alimentazione|tension de red|red|alimentacion|voltaje|tensao|rede|alimentacao|voltagem|spanning|netspanning|net|voeding|napiecie|siec|napiecie sieci|zasilanie|napeti|sit|gerilim|voltaj|sebeke|sebeke gerilimi|spanning|spenning|spaending|natspanning|nettspenning|jannite|verkko|u|напряжение|сеть',
  ),
  frequency_Hz: list(
    'frequency|freq|frequenz|netzfrequenz|frequence|frequenza|frecuencia|frequencia|frequentie|czestotliwosc|czest|frekvence|kmitocet|frekans|frekvens|taajuus|f|частота',
  ),
  ductDiameter_m: list(
    'duct dia|duct diameter|duct|pipe dia|pipe diameter|pipe|duct o|test duct|inlet dia|inlet diameter|rohr|rohrdurchmesser|kanal|kanaldurchmesser|messrohr|rohr o|leitung|durchmesser|gaine|diametre gaine|conduit|diametre conduit|conduite|diam gaine|tuyau|diametre|condotto|diametro condotto|tubo|diametro tubo|tubazione|canale|conducto|diametro conducto|ducto|tuberia|diametro|duto|diametro duto|conduta|diametro conduta|kanaal|buis|buisdiameter|kanaaldiameter|leiding|pijp|rura|srednica rury|srednica kanalu|przewod|srednica|potrubi|prumer potrubi|prumer|boru|boru capi|kanal capi|cap|kanaldiameter|rordiameter|ror|kanal o|ror diameter|putki|kanava|putken halkaisija|d|труба|диаметр трубы|трубы|воздуховод',
  ),
  airTemperature_C: list(
    'air temp|air temperature|temp|temperature|ambient|ambient temp|room temp|inlet temp|lufttemperatur|lufttemp|temperatur|raumtemperatur|umgebung|ansaugtemperatur|temperature air|temp air|temperature de l air|t air|temp ambiante|temperatura aria|temp aria|temperatura|t aria|temp ambiente|temperatura aire|temp aire|temperatura del aire|temperatura do ar|temp ar|luchttemperatuur|luchttemp|temperatuur|omgevingstemp|temperatura powietrza|temp powietrza|temp pow|teplota|teplota vzduchu|hava sicakligi|sicaklik|ortam sicakligi|lufttemperatur|lufttemp|ilman lampotila|lampotila|t|t luft|темп возд|температура воздуха|температура|темп',
  ),
  barometer_Pa: list(
    'barometer|baro|barometric pressure|atm pressure|atmospheric pressure|air pressure|baro pressure|barometric|luftdruck|barometerstand|atm druck|pression atm|pression atmospherique|barometre|pression baro|press atm|pressione atmosferica|pressione atm|barometro|press atmosferica|presion atmosferica|presion atm|presion barometrica|pressao atmosferica|pressao atm|pressao barometrica|luchtdruk|barometerstand|atm druk|cisnienie atmosferyczne|cisn atm|cisnienie atm|barometr|cisnienie otoczenia|tlak vzduchu|atm tlak|barometr|hava basinci|atm basinc|atmosfer basinci|barometre|lufttryck|lufttrykk|lufttryk|barometer|ilmanpaine|pb|patm|p atm|p baro|b|барометр|атм давление|ратм',
  ),
};
