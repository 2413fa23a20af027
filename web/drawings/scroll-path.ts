/** A blower's casing seen from the inlet side: it widens with the turning of the wheel, and the air leaves at the top. Drawn, not computed with. */
const CENTRE = { x: 70, y: 76 };
const TONGUE_DEG = 38;
const NARROW = 40;
const WIDE = 62;
const MOUTH_X = 148;

const onSpiral = (clockwise_deg: number): [number, number] => {
  const share = (clockwise_deg - TONGUE_DEG) / (360 - TONGUE_DEG);
  const r = NARROW + (WIDE - NARROW) * share;
  const a = (clockwise_deg * Math.PI) / 180;
  return [CENTRE.x + r * Math.sin(a), CENTRE.y - r * Math.cos(a)];
};

const written = ([x, y]: [number, number]): string => `${x.toFixed(1)} ${y.toFixed(1)}`;

function outline(): string {
  const tongue = onSpiral(TONGUE_DEG);
  const around = Array.from({ length: 41 }, (_, i) => onSpiral(TONGUE_DEG + ((360 - TONGUE_DEG) * i) / 40));
  return `M${MOUTH_X} ${tongue[1].toFixed(1)}L${around.map(written).join('L')}H${MOUTH_X}Z`;
}

/** An arrow round the wheel, clockwise or against it, with its head at the end. */
function turnArrow(clockwise: boolean): { arc: string; head: string } {
  const r = 31.5;
  const at = (deg: number): [number, number] => [
    CENTRE.x + r * Math.sin((deg * Math.PI) / 180),
    CENTRE.y - r * Math.cos((deg * Math.PI) / 180),
  ];
  const [from, to] = clockwise ? [205, 325] : [325, 205];
  return {
    arc: `M${written(at(from))}A${r} ${r} 0 0 ${clockwise ? 1 : 0} ${written(at(to))}`,
    head: `translate(${written(at(to))}) rotate(${clockwise ? to : to + 180})`,
  };
}

export const SCROLL = {
  centre: CENTRE,
  outline: outline(),
  /** the stream of air along the widening way and out */
  stream: `M${[60, 110, 160, 210, 260, 310, 345].map((deg) => written(midway(deg))).join('L')}`,
  out: { y: CENTRE.y - (WIDE + 31) / 2, from: CENTRE.x + 12, to: MOUTH_X + 4 },
  right: turnArrow(true),
  wrong: turnArrow(false),
};

/** Between wheel and casing. */
function midway(deg: number): [number, number] {
  const [x, y] = onSpiral(deg);
  const out = Math.hypot(x - CENTRE.x, y - CENTRE.y);
  const r = (out + 33) / 2;
  return [CENTRE.x + ((x - CENTRE.x) * r) / out, CENTRE.y + ((y - CENTRE.y) * r) / out];
}
