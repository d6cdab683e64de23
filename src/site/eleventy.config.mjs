// How the pages become a site: one layout, links that hold wherever the folder is put, no script.
import highlight from '@11ty/eleventy-plugin-syntaxhighlight';

const SECTIONS = [
  ['start', 'Start'],
  ['work', 'Work'],
  ['reference', 'Look up'],
  ['checks', 'Checks'],
];

export default function configure(config) {
  // What is wider than the page is moved sideways, by the keyboard too.
  config.addPlugin(highlight, { preAttributes: { tabindex: 0 } });
  // The pages are put together where git looks at nothing.
  config.setUseGitIgnore(false);
  config.setIncludesDirectory('../../src/site/layout');
  config.addGlobalData('layout', 'page.njk');
  config.addGlobalData('sections', SECTIONS);
  config.amendLibrary('md', (markdown) => markdown.set({ html: true }).use(headingAnchors));
  config.addCollection('byOrder', (pages) => pages.getAll().sort((a, b) => (a.data.order ?? 0) - (b.data.order ?? 0)));
  config.addTransform('relative', function relative(content) {
    return this.page.outputPath?.endsWith('.html') ? relativeLinks(content, this.page.url) : content;
  });
  return { markdownTemplateEngine: false, htmlTemplateEngine: 'njk' };
}

/** Headings can be linked to, by their words. */
function headingAnchors(markdown) {
  markdown.core.ruler.push('heading-anchors', ({ tokens }) => {
    const taken = new Map();
    for (const [at, token] of tokens.entries()) {
      if (token.type !== 'heading_open') continue;
      const words = tokens[at + 1].content
        .toLowerCase()
        .replace(/[^\w\- ]/g, '')
        .trim()
        .replace(/ /g, '-');
      const count = taken.get(words) ?? 0;
      taken.set(words, count + 1);
      token.attrSet('id', count === 0 ? words : `${words}-${count}`);
    }
  });
  // A wide table is moved sideways by itself, with the keyboard too.
  markdown.renderer.rules.table_open = () => '<div class="wide" tabindex="0" role="group" aria-label="Table"><table>';
  markdown.renderer.rules.table_close = () => '</table></div>';
}

/** So that the pages can lie in any folder of any host, or on a disk. */
function relativeLinks(html, url) {
  const up = '../'.repeat(url.split('/').length - 2) || './';
  return html.replace(/(href|src)="\/([^"]*)"/g, (_all, name, target) => {
    const [file, anchor] = target.split('#');
    const whole = file === '' || file.endsWith('/') ? `${file}index.html` : file;
    return `${name}="${up}${whole}${anchor === undefined ? '' : `#${anchor}`}"`;
  });
}
