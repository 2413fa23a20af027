import { photos } from '../api.ts';
import { handsfreeReader } from '../photo/handsfree-reader.ts';

/** Reads the plate on the stage. */
export const plateReader = handsfreeReader(photos.readPlate);
