/** placeholder while it is being built */
export function DuctsPlace(_: { wide: boolean }) {
  return <p />;
}
