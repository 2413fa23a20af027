import { Icon } from '../drawings/icons.tsx';
import { MarketFind } from '../drawings/market-find.tsx';
import { openDemo } from '../jobs/demo.ts';
import { startJob } from '../jobs/start-job.ts';
import { go } from '../state/route.ts';
import { changeSettings, settings, type Language } from '../state/settings.ts';
import { LANGUAGES, texts } from '../texts/index.ts';

/** The first page of a first visit: the question, and two ways to an answer. */
export function Welcome() {
  const t = texts.value;
  return (
    <main class="sheet-of-work welcome">
      <div class="languages">
        {(Object.keys(LANGUAGES) as Language[]).map((language) => (
          <button
            key={language}
            type="button"
            class="tap"
            lang={language}
            aria-pressed={settings.value.language === language}
            onClick={() => changeSettings({ language })}
          >
            {LANGUAGES[language].name}
          </button>
        ))}
      </div>
      <MarketFind />
      <h1>{t.app.question}</h1>
      <p class="lead">{t.welcome.lead}</p>
      <button type="button" class="box fill next" onClick={() => void openDemo()}>
        <span>
          {t.welcome.demo}
          <small>{t.welcome.demoHint}</small>
        </span>
        <Icon name="on" />
      </button>
      <button type="button" class="box next" onClick={startJob}>
        <span>
          {t.welcome.start}
          <small>{t.welcome.startHint}</small>
        </span>
        <Icon name="on" />
      </button>
      <ol class="welcome-steps">
        {t.welcome.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <button type="button" class="tap" onClick={() => go({ page: 'jobs' })}>
        {t.welcome.other}
      </button>
    </main>
  );
}
