import { texts } from '../texts/index.ts';

/** Where the water tube joins the pipe, asked by picture: near and far read differently by a sixth to a third. */
export function TapChoice({ tap, onChoose }: { tap: 'near' | 'far' | null; onChoose: (tap: 'near' | 'far') => void }) {
  const t = texts.value.readings;
  return (
    <div class="tap-choice" role="radiogroup" aria-label={t.whereTap}>
      <p class="second">{t.whereTap}</p>
      <button type="button" role="radio" class="tile" aria-checked={tap === 'far'} onClick={() => onChoose('far')}>
        <Pipe at={118} />
        <span>{t.tapFar}</span>
        <small>{t.tapFarHint}</small>
      </button>
      <button type="button" role="radio" class="tile" aria-checked={tap === 'near'} onClick={() => onChoose('near')}>
        <Pipe at={28} />
        <span>{t.tapNear}</span>
        <small>{t.tapNearHint}</small>
      </button>
    </div>
  );
}

function Pipe({ at }: { at: number }) {
  return (
    <svg viewBox="0 0 150 58" width="150" height="58" class="ltr" aria-hidden="true">
      <path d="M12 12H150M12 38H150" stroke="var(--ink)" stroke-width="1.8" />
      <path d="M9 8h6v10H9zM9 32h6v10H9z" fill="var(--ink)" />
      <path
        d="M16 20C30 21 42 15 52 14M16 30C30 29 42 35 52 36"
        fill="none"
        stroke="var(--air)"
        stroke-width="1.4"
        stroke-dasharray="5 3.5"
      />
      <path d="M-2 25H146" stroke="var(--air)" stroke-width="2.4" stroke-dasharray="11 6" />
      <path d={`M${at - 5} 38h10v5h-10z`} fill="var(--ink)" />
      <path d={`M${at} 43v14`} stroke="var(--ink)" stroke-width="3" />
    </svg>
  );
}
