import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { sendPhoto, type Problem, type UploadedPhoto } from '../api.ts';
import { DangerMark } from '../drawings/marks.tsx';
import { Icon } from '../drawings/icons.tsx';
import { texts } from '../texts/index.ts';
import { sayNumber } from '../words/say.ts';
import { problemWords } from './problem-words.ts';

type Going = { state: 'waiting' } | { state: 'sending'; share: number } | { state: 'failed'; problem: Problem };

/** What is to be photographed, and how. */
export type PhotoWords = { how: string; takeHint: string };

/** Takes a photo or chooses one, sends it, shows how far it is, and can be stopped. */
export function TakePhoto({ words, onPhoto }: { words: PhotoWords; onPhoto: (photo: UploadedPhoto) => void }) {
  const t = texts.value;
  const going = useSignal<Going>({ state: 'waiting' });
  const stop = useRef<() => void>(() => {});
  useEffect(() => () => stop.current(), []);
  const send = async (input: HTMLInputElement): Promise<void> => {
    const file = input.files?.[0];
    input.value = '';
    if (!file) return;
    going.value = { state: 'sending', share: 0 };
    const { answer, giveUp } = sendPhoto(file, (share) => {
      if (going.value.state === 'sending') going.value = { state: 'sending', share };
    });
    stop.current = giveUp;
    const sent = await answer;
    if (sent.ok) onPhoto(sent.value);
    else
      going.value =
        sent.problem.detail === 'given up' ? { state: 'waiting' } : { state: 'failed', problem: sent.problem };
  };
  if (going.value.state === 'sending') {
    const percent = Math.round(going.value.share * 100);
    return (
      <div class="sending" role="status">
        <p>{percent < 100 ? t.photo.sending(sayNumber(percent)) : t.photo.turning}</p>
        <progress max="100" value={percent} aria-label={t.photo.sending('')} />
        <button type="button" class="press" onClick={() => stop.current()}>
          {t.common.stop}
        </button>
      </div>
    );
  }
  return (
    <>
      {going.value.state === 'failed' && (
        <p class="amiss upload-amiss" role="alert">
          <DangerMark size={22} filled />
          {problemWords(going.value.problem, t)}
        </p>
      )}
      <p>{words.how}</p>
      <label class="box fill next pick">
        <span>
          {t.photo.take}
          <small>{words.takeHint}</small>
        </span>
        <Icon name="camera" />
        <input
          type="file"
          accept="image/*"
          capture="environment"
          onChange={(event) => void send(event.currentTarget)}
        />
      </label>
      <label class="box next pick">
        <span>
          {t.photo.choose}
          <small>{t.photo.chooseHint}</small>
        </span>
        <Icon name="file" />
        <input type="file" accept="image/*" onChange={(event) => void send(event.currentTarget)} />
      </label>
    </>
  );
}
