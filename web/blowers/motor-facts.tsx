import type { ComponentChildren } from 'preact';
import type { WorstDay } from '../../src/assessment.ts';
import { texts } from '../texts/index.ts';
import { sayShort } from '../match/say.ts';
import { sayCable, sayShare } from './say-motor.ts';

/** A band wider than the value itself is a guess. */
const A_GUESS = 1;

/** One line each: lowest voltage, cable, start, highest speed, trust in meters. */
export function MotorFacts({ day }: { day: WorstDay }) {
  const t = texts.value.blowers.worst;
  const { lowest, cable, start, meters } = day;
  return (
    <>
      {day.usableShare < 0.995 && <p class="second">{t.usable(sayShare(day.usableShare))}</p>}
      {!lowest && <p class="second">{t.lowestUnknown}</p>}
      <dl class="facts">
        {lowest && (
          <Fact
            name={t.lowest(sayShort('voltage', lowest.voltage_V))}
            over={lowest.current_A > day.plate_A || lowest.mayStall}
            value={t.lowestSays(sayShort('current', lowest.current_A), sayShort('current', day.plate_A))}
          >
            {lowest.mayStall ? t.stalls : t.torque(sayShare(lowest.torqueLeft))}
          </Fact>
        )}
        {cable && (
          <Fact
            name={t.cable}
            over={cable.dropFraction > 0.05}
            value={t.cableSays(sayShort('voltage', cable.drop_V), sayShare(cable.dropFraction))}
          >
            {t.cableStart(sayShare(cable.startVolts))}
            {cable.dropFraction > 0.05 && cable.enough_m2 !== null && <> {t.cableEnough(sayCable(cable.enough_m2))}</>}
          </Fact>
        )}
        {start && (
          <Fact
            name={t.start}
            over={start.tooLong}
            value={
              start.seconds === null || start.range_s === null
                ? t.startNever
                : t.startSays(
                    sayShort('time', start.seconds),
                    sayShort('time', start.range_s[0]),
                    sayShort('time', start.range_s[1]),
                  )
            }
          >
            {t.startHint}
          </Fact>
        )}
        <HighestSpeed day={day} />
        {meters.length > 0 && (
          <Fact
            name={t.meters}
            value={meters
              .map(({ way, within }) => `${t.meter[way]} ${within > A_GUESS ? t.guess : t.within(sayShare(within))}`)
              .join(', ')}
          />
        )}
      </dl>
    </>
  );
}

function HighestSpeed({ day: { speed } }: { day: WorstDay }) {
  const t = texts.value.blowers.worst;
  if (!speed) return null;
  const rpm = (value: number | null): string => (value === null ? '' : sayShort('speed', value));
  const tooFast = speed.now_rpm > speed.highest_rpm * 1.001;
  return (
    <Fact name={t.speed} over={tooFast} value={t.speedSays(rpm(speed.highest_rpm))}>
      {speed.bound === 'motor' ? t.boundMotor(rpm(speed.byWheel_rpm)) : t.boundWheel(rpm(speed.byMotor_rpm))}{' '}
      {(tooFast ? t.tooFast : t.nowTurns)(rpm(speed.now_rpm))}
      {speed.pairs.slice(0, 2).map((pair) => (
        <span class="block" key={`${pair.motorPulleyDiameter_m}/${pair.wheelPulleyDiameter_m}`}>
          {t.pair(
            sayShort('length', pair.motorPulleyDiameter_m),
            sayShort('length', pair.wheelPulleyDiameter_m),
            rpm(pair.wheelSpeed_rpm),
          )}
        </span>
      ))}
      {speed.beltSpeed_m_s !== null && <span class="block">{t.belt(sayShort('velocity', speed.beltSpeed_m_s))}</span>}
    </Fact>
  );
}

function Fact({
  name,
  value,
  over = false,
  children,
}: {
  name: string;
  value: string;
  over?: boolean;
  children?: ComponentChildren;
}) {
  return (
    <div class={over ? 'fact over' : 'fact'}>
      <dt>{name}</dt>
      <dd>
        <b>{value}</b>
        {children && <small>{children}</small>}
      </dd>
    </div>
  );
}
