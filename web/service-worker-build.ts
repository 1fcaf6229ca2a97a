/** Builds the service worker beside the app, with the list of what the app is made of. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';

/** Old browsers' fonts; every browser with a service worker takes the newer ones. */
const LEFT_OUT = /\.(?:woff|map)$/;

export function serviceWorkerBuild(publicFolder: string): Plugin {
  return {
    name: 'pourwright-service-worker',
    apply: 'build',
    buildStart() {
      this.emitFile({
        type: 'chunk',
        id: join(publicFolder, '..', 'service-worker.ts'),
        fileName: 'sw.js',
      });
    },
    generateBundle: {
      // after the bundler's own tidying, which drops scripts that only brought styles
      order: 'post',
      handler(_options, bundle) {
        const made = Object.values(bundle).filter(({ fileName }) => fileName !== 'sw.js');
        const kept = readdirSync(publicFolder, { recursive: true, encoding: 'utf8' });
        const hash = createHash('sha256');
        for (const each of made)
          hash.update(each.fileName).update(each.type === 'chunk' ? each.code : each.source);
        for (const name of kept) hash.update(name).update(readFileSync(join(publicFolder, name)));
        const files = [...made.map(({ fileName }) => fileName), ...kept, 'index.html']
          .filter((name) => !LEFT_OUT.test(name))
          .map((name) => `/${name}`);
        const worker = bundle['sw.js'];
        if (worker?.type !== 'chunk') throw new Error('the service worker was not built');
        worker.code = worker.code
          .replaceAll('__KEPT_FILES__', JSON.stringify([...new Set(files)].sort()))
          .replaceAll('__KEPT_AS__', JSON.stringify(hash.digest('hex').slice(0, 16)));
      },
    },
  };
}
