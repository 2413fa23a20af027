import { cannotKeep, keepMine, saveState, takeTheirs } from '../state/bench.ts';
import { texts } from '../texts/index.ts';

/** Speaks up only when something about keeping the work is not as it should be. */
export function SaveStrip() {
  const t = texts.value.saving;
  if (cannotKeep.value) return <p class="save-strip">{t.cannotKeep}</p>;
  if (saveState.value === 'offline')
    return (
      <p class="save-strip" role="status">
        {t.offline}
      </p>
    );
  if (saveState.value !== 'conflict') return null;
  return (
    <div class="save-strip" role="alert">
      {t.conflict}
      <div class="actions">
        <button type="button" class="press" onClick={keepMine}>
          {t.keepMine}
        </button>
        <button type="button" class="press" onClick={() => void takeTheirs()}>
          {t.takeTheirs}
        </button>
      </div>
    </div>
  );
}
