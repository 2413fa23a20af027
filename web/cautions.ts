/**
 * The cautions: what can hurt, in one short sentence and a longer one, in every language, and where it comes from.
 * General words only. They stand where the danger is; local codes and licensed trades come before them.
 */
export type CautionText = { short: string; long: string };
export type Caution = { en: CautionText; ur: CautionText; source: string };

export const CAUTIONS = {
  dustExplosion: {
    en: {
      short: 'Fine dust in air can explode.',
      long: 'Keep the collector outdoors or with relief to the outside, sweep settled dust before it gathers, and ask your fire authority what your local code wants.',
    },
    ur: {
      short: 'ہوا میں باریک برادہ دھماکے سے جل سکتا ہے۔',
      long: 'ڈرم اور فلٹر باہر رکھیں، جمع برادہ صاف کرتے رہیں، اور مقامی قانون محکمہ آگ بجھانے سے پوچھیں۔',
    },
    source: 'NFPA 652/660 and 664 in general words; HSE woodworking information sheets WIS23, WIS32',
  },
  sparks: {
    en: {
      short: 'No sparks into wood or lint dust.',
      long: 'Never join a grinder or a welder to a wood or lint duct. No nails, ash or cigarettes. A spark can smoulder in the paper for hours: empty the drum and look for embers after work.',
    },
    ur: {
      short: 'لکڑی یا روئی کے برادے میں چنگاری نہ جائے۔',
      long: 'گرائنڈر یا ویلڈنگ کو اس پائپ سے کبھی نہ جوڑیں۔ کیل، راکھ، سگریٹ نہیں۔ چنگاری گھنٹوں سلگتی ہے: شام کو ڈرم خالی کر کے دیکھیں۔',
    },
    source: 'UFC 3-410-04N section 7-2; NFPA 91-1999 5-2, 5-3',
  },
  plasticStatic: {
    en: {
      short: 'Plastic pipe gathers static.',
      long: 'Bond and earth the metal parts and the wire of hoses. A wire on plastic drains only what is near it: for sanding dust, solvent or metal take metal duct.',
    },
    ur: {
      short: 'پلاسٹک پائپ میں بجلی جمع ہوتی ہے۔',
      long: 'لوہے کے حصے اور ہوز کی تار آپس میں اور زمین سے جوڑیں۔ باریک برادے، تھنر یا دھات کے لیے لوہے کا پائپ لیں۔',
    },
    source: 'NFPA 91-1999 5-2, 5-3; NFPA 652/660 in general words',
  },
  burstingWheel: {
    en: {
      short: 'A wheel turned too fast flies apart.',
      long: 'Stay below its safe speed. Cracks, rust and lost balance clips lower it. First start from the side, with the casing closed and nobody in line with the wheel.',
    },
    ur: {
      short: 'حد سے تیز پہیہ ٹوٹ کر اڑتا ہے۔',
      long: 'محفوظ رفتار سے نیچے رہیں۔ دراڑ، زنگ اور گرا ہوا وزن اسے کمزور کرتے ہیں۔ پہلی بار ایک طرف کھڑے ہو کر، ڈھکنا بند کر کے چلائیں۔',
    },
    source: 'wheel makers’ tip-speed limits and a forensic case of an over-sped wheel, in general words',
  },
  belt: {
    en: {
      short: 'Belt, wheel and inlet take fingers.',
      long: 'Guard the belt, and the inlet with a grid. Switch off, pull the plug and wait until all stands still before you touch a belt, a board or the wheel.',
    },
    ur: {
      short: 'پٹا، پہیہ اور منہ انگلیاں کاٹ لیتے ہیں۔',
      long: 'پٹے پر ڈھکنا اور منہ پر جالی لگائیں۔ ہاتھ لگانے سے پہلے بند کریں، پلگ نکالیں اور سب رکنے دیں۔',
    },
    source: 'HSE HSG258 and usual machine-guarding rules in general words',
  },
  mains: {
    en: {
      short: 'Mains can kill.',
      long: 'Have a licensed electrician do the wiring, the earth and the protection. Measure only at covered clamp points. A capacitor still bites when all is off.',
    },
    ur: {
      short: 'بجلی جان لے سکتی ہے۔',
      long: 'تار، ارتھ اور حفاظت لائسنس والے الیکٹریشن سے کرائیں۔ کلیمپ صرف ڈھکی تار پر لگائیں۔ بند ہونے پر بھی کپیسٹر جھٹکا دیتا ہے۔',
    },
    source: 'usual electrical safety practice; local wiring codes',
  },
  collapsingDrum: {
    en: {
      short: 'A blocked inlet can crush the drum.',
      long: 'Fit a relief flap or hoops, keep away from the lid, and choose a drum that stands the highest suction with room to spare.',
    },
    ur: {
      short: 'راستہ بند ہو تو ڈرم پچک سکتا ہے۔',
      long: 'حفاظتی ڈھکنا یا کڑے لگائیں، ڈھکن سے دور رہیں، اور مضبوط ڈرم لیں۔',
    },
    source: 'ring-buckling of thin cylinders, worked out by this program; a third of the computed failure is allowed',
  },
  returnedAir: {
    en: {
      short: 'Returned air brings the finest dust back.',
      long: 'The finest dust passes and harms lungs most; some woods may not be returned at all. Better blow outdoors, away from neighbours. Never call returned air safe to breathe.',
    },
    ur: {
      short: 'واپس آتی ہوا سب سے باریک برادہ لاتی ہے۔',
      long: 'یہی برادہ پھیپھڑوں کو سب سے زیادہ نقصان دیتا ہے۔ ہوا باہر نکالیں، پڑوسیوں سے دور۔',
    },
    source: 'DGUV 209-044 / TRGS 553; HSE HSG258; NFPA and HSE on returning air, in general words',
  },
  mask: {
    en: {
      short: 'The mask stays on.',
      long: 'For sanding, and for emptying the drum or changing filters, wear a fitting dust mask. Extraction makes it better, not clean.',
    },
    ur: {
      short: 'ماسک پہنے رکھیں۔',
      long: 'رگڑائی کے وقت، ڈرم خالی کرتے اور فلٹر بدلتے ہوئے ٹھیک بیٹھنے والا ماسک پہنیں۔',
    },
    source: 'HSE woodworking guidance on respiratory protection',
  },
  openRun: {
    en: {
      short: 'Running with the pipe off can burn the motor.',
      long: 'Many blowers draw most power with nothing attached. For the reading with the cap off, run only a few seconds and watch the amps.',
    },
    ur: {
      short: 'پائپ اتار کر چلانے سے موٹر جل سکتی ہے۔',
      long: 'بہت سے بلوئر کھلے چلنے پر سب سے زیادہ بجلی لیتے ہیں۔ چند سیکنڈ چلائیں اور ایمپیئر دیکھیں۔',
    },
    source: 'textbook fan power curves (forward-curved and radial wheels); fan laws',
  },
  wrongWay: {
    en: {
      short: 'Running backwards still sucks, but badly.',
      long: 'Amps do not tell, the drawing does. Switch off, look at scroll and blades, and let an electrician change the wiring.',
    },
    ur: {
      short: 'الٹا چلنے پر بھی ہوا آتی ہے، مگر کم۔',
      long: 'ایمپیئر سے پتہ نہیں چلتا، تصویر سے چلتا ہے۔ بند کریں، خول اور پر دیکھیں، تار الیکٹریشن بدلے۔',
    },
    source: 'plant-maintenance and fan practice; sources disagree on amps, so shape decides',
  },
} as const satisfies Record<string, Caution>;

export type CautionName = keyof typeof CAUTIONS;
