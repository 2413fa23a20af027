/** placeholder while it is being built */
export function CardPlace() {
  return <p />;
}
