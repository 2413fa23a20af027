import type { Rig } from '../../src/readings/schema.ts';
import { texts } from '../texts/index.ts';
import { digits, isolated, say, sayNumber, unitFor } from '../words/say.ts';
import type { Dimension } from './rig-dimensions.ts';

/** What the letters of the rig's drawing mean, with the size to build and the rule it follows. */
export function RigLegend({ rig, dimensions }: { rig: Rig; dimensions: readonly Dimension[] }) {
  const t = texts.value.readings;
  return (
    <>
      <table class="rig-legend">
        <tbody>
          {dimensions.map((dimension) => (
            <tr key={dimension.letter} class={dimension.short ? 'short' : undefined}>
              <th scope="row">
                <bdi>{dimension.letter}</bdi>
              </th>
              <td>
                {t.dimensions[dimension.name]}
                <small>{ruleWords(dimension)}</small>
              </td>
              <td>
                <bdi>
                  {dimension.size_m === null ? '?' : say('length', dimension.size_m, lengthUnit(dimension.size_m))}
                </bdi>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="second">{t.rigNotes[rig.method]}</p>
    </>
  );
}

/** Lengths of a pipe in metres, small places in millimetres, for those who read pipes in millimetres. */
const lengthUnit = (size_m: number): string | undefined =>
  size_m >= 1 && unitFor('length') === 'mm' ? 'm' : undefined;

function ruleWords({ rule, short }: Dimension): string {
  const t = texts.value.readings;
  if (rule === null) return '';
  const figure = String(rule.times).includes('.') ? String(rule.times) : sayNumber(rule.times);
  const times = isolated(`${digits(figure)} × ${rule.of}`);
  const said = rule.orMore ? t.orMore(times) : times;
  return short ? t.tooShort(said) : said;
}
