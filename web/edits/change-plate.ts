import type { PlateFigure } from '../plate/plate-fields.ts';
import type { PlateWork, Said } from '../plate/plate-work.ts';
import type { RatingChoice } from '../plate/ratings.ts';
import type { Doc } from '../state/doc.ts';

type Change = (work: PlateWork) => PlateWork;

/** Changes the work on one plate; nothing else of the document. */
export function changePlate(doc: Doc, photoId: string, change: Change): Doc {
  const work = doc.plates?.[photoId];
  return work ? { ...doc, plates: { ...doc.plates, [photoId]: change(work) } } : doc;
}

/** Says something about one figure: other words, or that it is right. Words alone say so too. */
export const sayFigure =
  (name: PlateFigure, said: Said | null): Change =>
  (work) => {
    const next = { ...work.said };
    if (said) next[name] = said;
    else delete next[name];
    return { ...work, said: next };
  };

/** Chooses one of several ratings: words typed for another one go, that its print is read right stays. */
export const chooseRating =
  (rating: number, choices: readonly RatingChoice[]): Change =>
  (work) => {
    const said = { ...work.said };
    for (const name of Object.keys(said) as PlateFigure[]) {
      const values = new Set(choices.map(({ values: of }) => of[name]));
      if (values.size < 2) continue;
      if (said[name]?.seen) said[name] = { seen: true };
      else delete said[name];
    }
    return { ...work, rating, said };
  };
