import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { Icon } from '../drawings/icons.tsx';
import { LANGUAGES, texts } from '../texts/index.ts';
import { changeSettings, dark, settings, type Language } from '../state/settings.ts';
import { hashOf } from '../state/route.ts';
import { saveState } from '../state/bench.ts';
import { job } from '../state/job.ts';
import { openDemo } from '../jobs/demo.ts';
import { startJob } from '../jobs/start-job.ts';
import { saveToFile } from '../jobs/job-file.ts';
import { OpenFile } from '../jobs/open-file.tsx';

/** What belongs to the job as a whole: kept behind one button, opened over the page, closed by Escape or a tap beside it. */
export function JobMenu() {
  const open = useSignal(false);
  const root = useRef<HTMLDivElement>(null);
  const t = texts.value;
  useEffect(() => {
    if (!open.value) return undefined;
    const onKey = (event: KeyboardEvent): void => {
      if (event.key === 'Escape') open.value = false;
    };
    const onDown = (event: PointerEvent): void => {
      if (!root.current?.contains(event.target as Node)) open.value = false;
    };
    addEventListener('keydown', onKey);
    addEventListener('pointerdown', onDown);
    return () => {
      removeEventListener('keydown', onKey);
      removeEventListener('pointerdown', onDown);
    };
  }, [open.value]);
  const shut = (): void => {
    open.value = false;
  };
  return (
    <div class="menu-root" ref={root}>
      <button
        type="button"
        class="icon"
        aria-label={t.common.menu}
        aria-expanded={open.value}
        onClick={() => (open.value = !open.value)}
      >
        <Icon name={open.value ? 'close' : 'more'} />
      </button>
      {open.value && (
        <div class="menu" onClick={(event) => (event.target as Element).closest('a, button.shuts') && shut()}>
          <p class="menu-name">
            <b>{job.value.name || t.jobs.unnamed}</b>
            <span class="second">{t.saving[saveState.value === 'idle' ? 'saving' : saveState.value]}</span>
          </p>
          <a href={hashOf({ page: 'shop' })}>{t.shop.title}</a>
          <a href={hashOf({ page: 'jobs' })}>{t.jobs.mine}</a>
          <button type="button" class="shuts" onClick={startJob}>
            {t.jobs.start}
          </button>
          <button type="button" class="shuts" onClick={() => void openDemo()}>
            {t.welcome.demo}
          </button>
          <button type="button" class="shuts" onClick={() => saveToFile(job.value)}>
            {t.jobs.toFile}
          </button>
          <OpenFile label={t.jobs.fromFile} onDone={shut} />
          <a href={hashOf({ page: 'settings' })}>{t.settings.unitsAndDigits}</a>
          <div class="menu-either">
            {(Object.keys(LANGUAGES) as Language[]).map((language) => (
              <button
                key={language}
                type="button"
                lang={language}
                aria-pressed={settings.value.language === language}
                onClick={() => changeSettings({ language })}
              >
                {LANGUAGES[language].name}
              </button>
            ))}
          </div>
          <button type="button" onClick={() => changeSettings({ theme: dark.value ? 'light' : 'dark' })}>
            {dark.value ? t.settings.toLight : t.settings.toDark}
          </button>
        </div>
      )}
    </div>
  );
}
