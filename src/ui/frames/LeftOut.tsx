import { useId, useMemo } from 'preact/hooks';
import { leftOutPath } from './planes';

interface LeftOutProps {
  readonly weight: Float32Array;
  readonly columns: number;
  /** CSS px a pixel. */
  readonly scale: number;
}

/** Hatches the pixels that were masked or thrown out. */
export function LeftOut({ weight, columns, scale }: LeftOutProps) {
  const id = useId();
  const path = useMemo(() => leftOutPath(weight, columns), [weight, columns]);
  if (path === '') return null;
  return (
    <>
      <defs>
        <pattern
          id={id}
          width="7"
          height="7"
          patternUnits="userSpaceOnUse"
          patternTransform={`scale(${1 / scale}) rotate(45)`}
        >
          <path class="left-out-dark" d="M2 0V7" />
          <path class="left-out-light" d="M3 0V7" />
        </pattern>
      </defs>
      <path class="left-out" d={path} transform={`scale(${scale})`} fill={`url(#${id})`} />
    </>
  );
}
