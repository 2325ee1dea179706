import {defineConfig} from 'vitest/config'

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    setupFiles: ['tests/setup.ts'],
    testTimeout: 180_000,
    hookTimeout: 180_000,
    coverage: {include: ['src/**/*.ts'], reporter: ['text-summary', 'html']}
  }
})
