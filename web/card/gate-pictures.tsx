/** One small pipe per machine: blade out and an arrow through it, or the blade across. */
export function GatePictures({ machines, open }: { machines: readonly string[]; open: readonly string[] }) {
  return (
    <span class="gates" aria-hidden="true">
      {machines.map((id) => (
        <svg key={id} width="46" height="58" viewBox="0 0 46 58" fill="none" stroke="#000">
          <path d="M14 0V58M32 0V58" stroke-width="2" />
          {open.includes(id) ? (
            <>
              <path d="M23 52V12" stroke-width="2.6" stroke-dasharray="9 5" />
              <path d="M17 14L23 3L29 14z" fill="#000" stroke="none" />
              <rect x="10" y="25" width="26" height="9" stroke-width="2" />
            </>
          ) : (
            <rect x="10" y="25" width="26" height="9" fill="#000" stroke-width="2" />
          )}
        </svg>
      ))}
    </span>
  );
}
