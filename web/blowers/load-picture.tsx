import type { WorstDay } from '../../src/assessment.ts';
import { texts } from '../texts/index.ts';
import { sayShare } from './say-motor.ts';
import { loadRuler, type LoadRuler } from './load-bar.ts';

/** Bars of motor load against the plate: at its easiest, at its hardest with its band, with nothing attached. */
export function LoadPicture({ day, planName }: { day: WorstDay; planName: string }) {
  const t = texts.value.blowers.worst;
  const { heaviest, lightestLoad, openLoad, loadAtMost } = day;
  if (!heaviest) return null;
  const ruler = loadRuler([heaviest.load, heaviest.interval95[1], lightestLoad, openLoad]);
  const limit = loadAtMost * day.usableShare;
  return (
    <figure class="loads" role="img" aria-label={t.barSays(sayShare(heaviest.load), sayShare(limit))}>
      {lightestLoad !== null && lightestLoad < 0.995 * heaviest.load && (
        <Load label={t.lightest} load={lightestLoad} ruler={ruler} limit={limit} />
      )}
      <Load
        label={t.heaviest(planName, heaviest.filterState)}
        load={heaviest.load}
        band={heaviest.interval95}
        ruler={ruler}
        limit={limit}
        main
      />
      {openLoad !== null && <Load label={t.open} load={openLoad} ruler={ruler} limit={limit} />}
      <div class="load-scale" aria-hidden="true">
        <span class="load-limit" style={{ insetInlineStart: `${ruler.place(limit)}%` }}>
          {t.allowed(sayShare(limit))}
        </span>
        <span style={{ insetInlineStart: `${ruler.place(1)}%` }}>{t.plate}</span>
      </div>
    </figure>
  );
}

type Bar = {
  label: string;
  load: number;
  band?: readonly [number, number];
  ruler: LoadRuler;
  limit: number;
  main?: boolean;
};

function Load({ label, load, band, ruler, limit, main = false }: Bar) {
  const at = (value: number) => `${ruler.place(value)}%`;
  return (
    <div class={main ? 'load main' : 'load'}>
      <span class="load-name">
        {label}
        {band && <small>{texts.value.blowers.worst.band(sayShare(band[0]), sayShare(band[1]))}</small>}
      </span>
      <b class={load > 1 ? 'over' : undefined}>
        <bdi>{sayShare(load)}</bdi>
      </b>
      <span class="track">
        <i class="over-plate" style={{ insetInlineStart: at(1) }} />
        <i class="fill" style={{ inlineSize: at(load) }} />
        {band && (
          <i
            class="band"
            style={{ insetInlineStart: at(band[0]), inlineSize: `${ruler.place(band[1]) - ruler.place(band[0])}%` }}
          />
        )}
        <i class="limit" style={{ insetInlineStart: at(limit) }} />
        <i class="plate" style={{ insetInlineStart: at(1) }} />
      </span>
    </div>
  );
}
