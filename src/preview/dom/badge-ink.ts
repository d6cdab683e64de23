/** Ink for numbers on coloured badges, whatever theme the colours come from. */

const SEVERITIES = ['error', 'warning', 'info'] as const;

/** Red, green and blue, 0..255. */
export type Rgb = readonly [number, number, number];

/** WCAG 2.2, "relative luminance". */
export function luminance(colour: Rgb): number {
  const [red, green, blue] = colour.map((value) => {
    const share = value / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** Black or white, whichever stands out more: by at least 4.58 : 1 on any colour. */
export function inkOn(colour: Rgb): '#000000' | '#ffffff' {
  const light = luminance(colour);
  return (light + 0.05) / 0.05 >= 1.05 / (light + 0.05) ? '#000000' : '#ffffff';
}

/** Keeps `--ink-error` and so on in step with the theme. */
export function followTheme(): void {
  const probe = document.createElement('span');
  probe.hidden = true;
  document.body.append(probe);
  const read = () => {
    for (const severity of SEVERITIES) {
      probe.style.setProperty('color', `var(--${severity})`);
      const [red = 0, green = 0, blue = 0] = (getComputedStyle(probe).color.match(/[\d.]+/g) ?? []).map(Number);
      const [name, ink] = [`--ink-${severity}`, inkOn([red, green, blue])];
      if (document.body.style.getPropertyValue(name) !== ink) document.body.style.setProperty(name, ink);
    }
  };
  read();
  // The editor writes its colours into the root's style, and the kind of theme into the body's class.
  const observer = new MutationObserver(read);
  observer.observe(document.documentElement, { attributes: true });
  observer.observe(document.body, { attributes: true, attributeFilter: ['class'] });
}
