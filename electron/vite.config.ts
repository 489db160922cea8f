import { defineConfig, type BuildEnvironmentOptions } from 'vite';

/** Builds the main process and the preload script, each into one file: a sandboxed preload can load no other. */
export default defineConfig({
  root: import.meta.dirname,
  publicDir: false,
  environments: {
    main: { build: script('main') },
    preload: { build: script('preload') },
  },
  builder: {
    async buildApp(builder) {
      const { main, preload } = builder.environments;
      if (!main || !preload) throw new Error('The shell is built from a main and a preload script.');
      await builder.build(main);
      await builder.build(preload);
    },
  },
});

function script(name: 'main' | 'preload'): BuildEnvironmentOptions {
  return {
    outDir: '../dist/electron',
    emptyOutDir: name === 'main',
    target: 'node22',
    minify: false,
    lib: { entry: `${name}.ts`, formats: ['cjs'], fileName: () => `${name}.cjs` },
    rolldownOptions: { external: ['electron', /^node:/] },
  };
}
