import type { Blower, Evidence, Job } from '../../src/job/types.ts';
import type { AirMeaning, MotorKind } from '../plate/plate-work.ts';
import type { PlateFigure, PlateKind } from '../plate/plate-fields.ts';
import { withTyped } from '../state/as-typed.ts';
import type { Edited } from '../state/job.ts';
import { withValueAt } from '../state/pointer.ts';
import { addEvidence } from './add-evidence.ts';
import { withoutPhoto } from './without-photo.ts';

/** One figure to be taken over: base unit, and the words for it. */
export type TakenFigure = { name: PlateFigure; value: number; text: string };

export type TakePlate = {
  blowerId: string;
  photoId: string;
  kind: PlateKind;
  figures: readonly TakenFigure[];
  motorKind: MotorKind;
  powerMeaning: 'shaft' | 'input';
  air: AirMeaning;
};

/** Figures that are the motor's own, by the name its form has for them. */
const OF_MOTOR: readonly PlateFigure[] = [
  'ratedPower_W',
  'voltage_V',
  'current_A',
  'frequency_Hz',
  'powerFactor',
  'efficiency',
  'serviceFactor',
];

/**
 * Puts what a plate says into its blower, in one step, and keeps its photo there. What the plate does not say stays as it was,
 * unless its power says that it is another motor's.
 * A largest flow and a largest pressure become two points, one without pressure and one without flow.
 */
export function takePlate(job: Job, data: TakePlate): Edited {
  const at = job.blowers.findIndex(({ id }) => id === data.blowerId);
  const blower = job.blowers[at];
  if (!blower) return { job, note: 'plate' };
  const path = `/blowers/${at}`;
  const figure = (name: PlateFigure): TakenFigure | undefined => data.figures.find((one) => one.name === name);

  let next = isOtherMotor(blower, data) ? withoutOldPlate(job, path) : job;
  const put = (place: string, { value, text }: TakenFigure): void => {
    next = withTyped(next, `${path}/${place}`, value, text);
  };
  for (const taken of data.figures) if (OF_MOTOR.includes(taken.name)) put(`motor/${taken.name}`, taken);
  const phases = figure('phases');
  if (phases) next = withValueAt(next, `${path}/motor/phases`, phases.value === 1 ? 1 : 3);
  const wheel = figure('wheelDiameter_m');
  if (wheel) put('wheel/diameter_m', wheel);
  const speed = figure('speed_rpm');
  const turns = speedPlace(blower, data.kind);
  if (speed && turns) put(turns, speed);

  if (data.kind === 'motor' && data.figures.some(({ name }) => OF_MOTOR.includes(name)))
    next = withMotorNature(next, path, data);
  next = withAir(next, data, figure('flow_m3_s'), figure('pressure_Pa'), wheelSpeed(blower, data.kind, speed));
  return { job: withPhotoKept(next, path, data.photoId), note: 'plate' };
}

/** A plate of another power is another motor's. @param data what is taken over */
export function isOtherMotor({ motor }: Blower, { kind, figures }: Pick<TakePlate, 'kind' | 'figures'>): boolean {
  const power = figures.find(({ name }) => name === 'ratedPower_W');
  return kind === 'motor' && power !== undefined && Math.abs(power.value / motor.ratedPower_W - 1) > SAME_POWER;
}

/** The same power in kW and in HP, rounded as plates round it. */
const SAME_POWER = 0.03;

/** What is known of the motor that was there says nothing of another one. */
const OF_ITS_OWN = [
  'voltage_V',
  'current_A',
  'powerFactor',
  'efficiency',
  'serviceFactor',
  'speed_rpm',
  'frequency_Hz',
];
const OF_ITS_PAST = ['idleCurrent_A', 'rewound', 'startsBy'];

const withoutOldPlate = (job: Job, path: string): Job =>
  [...OF_ITS_OWN, ...OF_ITS_PAST].reduce((now, name) => withTyped(now, `${path}/motor/${name}`, undefined, null), job);

/** Where a plate's speed goes: a motor's to the motor; a blower's to the wheel, where nothing better is known of it. */
function speedPlace({ drive, motor, runSpeed_rpm }: Blower, kind: PlateKind): string | null {
  if (kind === 'motor') return 'motor/speed_rpm';
  if (drive.kind === 'direct') return motor.speed_rpm == null ? 'motor/speed_rpm' : null;
  const pulleysKnown = drive.motorPulleyDiameter_m != null && drive.wheelPulleyDiameter_m != null;
  return runSpeed_rpm == null && !pulleysKnown ? 'runSpeed_rpm' : null;
}

/** The wheel's speed a plate's air is given at; a motor's speed is the wheel's only without a belt. */
const wheelSpeed = ({ drive }: Blower, kind: PlateKind, speed: TakenFigure | undefined): number | null =>
  speed && (kind === 'blower' || drive.kind === 'direct') ? speed.value : null;

function withMotorNature(job: Job, path: string, { motorKind, powerMeaning, figures }: TakePlate): Job {
  const has = (name: PlateFigure): boolean => figures.some((one) => one.name === name);
  const startsBy = has('startCapacitor_uF') ? 'start-capacitor' : has('capacitor_uF') ? 'run-capacitor' : null;
  const isOnePhase = figures.some(({ name, value }) => name === 'phases' && value === 1);
  let next = withValueAt(job, `${path}/motor/kind`, motorKind);
  next = withValueAt(next, `${path}/motor/ratedPowerMeaning`, powerMeaning);
  if (startsBy && isOnePhase && motorKind === 'induction') next = withValueAt(next, `${path}/motor/startsBy`, startsBy);
  return next;
}

function withAir(
  job: Job,
  { blowerId, photoId, air }: TakePlate,
  flow: TakenFigure | undefined,
  pressure: TakenFigure | undefined,
  speed_rpm: number | null,
): Job {
  const point = (flow_m3_s: number, pressure_Pa: number): Evidence => ({
    kind: 'rated-point',
    flow_m3_s,
    pressure_Pa,
    speed_rpm,
    photoId,
  });
  const points =
    air === 'one-point' && flow && pressure
      ? [point(flow.value, pressure.value)]
      : air === 'each-largest'
        ? [...(flow ? [point(flow.value, 0)] : []), ...(pressure ? [point(0, pressure.value)] : [])]
        : [];
  const cleared = withoutPhoto(job, blowerId, photoId, 'rated-point');
  const filled = points.reduce((now, evidence) => addEvidence(now, { blowerId, evidence }).job, cleared);
  return withOneEvidence(filled, blowerId);
}

/** A blower is never without evidence: its wheel is left. */
const withOneEvidence = (job: Job, blowerId: string): Job => ({
  ...job,
  blowers: job.blowers.map((blower) =>
    blower.id === blowerId && blower.evidence.length === 0 ? { ...blower, evidence: [{ kind: 'wheel' }] } : blower,
  ),
});

function withPhotoKept(job: Job, path: string, photoId: string): Job {
  const at = Number(path.split('/')[2]);
  const kept = job.blowers[at]?.platePhotoIds ?? [];
  return kept.includes(photoId) ? job : withValueAt(job, `${path}/platePhotoIds`, [...kept, photoId]);
}
