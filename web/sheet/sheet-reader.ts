import { photos } from '../api.ts';
import { handsfreeReader } from '../photo/handsfree-reader.ts';

/** Reads the sheet on the stage. */
export const sheetReader = handsfreeReader(photos.readSheet);
