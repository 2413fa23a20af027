import { ProcessDied, createSideProcess } from '../side-process.ts';
import type { PictureFault, UprightPicture } from './upright.ts';

export type DecoderTask =
  { kind: 'upright'; from: string; to: string } | { kind: 'narrowed'; from: string; width_px: number };

/**
 * Decodes foreign pictures in a process of its own, so that a picture made to hang or crash the decoder ends only that.
 * @param timeLimit_ms  longer than any honest photo takes
 */
export function createDecoder(timeLimit_ms: number) {
  const { ask, close } = createSideProcess(new URL('./decoder-process.ts', import.meta.url), timeLimit_ms);
  return {
    /** Writes the upright picture of the file `from` to `to`. @throws TookTooLong */
    async upright(from: string, to: string): Promise<UprightPicture | PictureFault> {
      try {
        return await ask({ kind: 'upright', from, to } satisfies DecoderTask);
      } catch (error) {
        if (error instanceof ProcessDied) return 'unreadable';
        throw error;
      }
    },
    /** A JPEG of an upright picture no wider than `width_px`. */
    narrowed: (from: string, width_px: number): Promise<Uint8Array> =>
      ask({ kind: 'narrowed', from, width_px } satisfies DecoderTask),
    close,
  };
}

export type Decoder = ReturnType<typeof createDecoder>;
