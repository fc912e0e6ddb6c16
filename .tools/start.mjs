// npm start: builds when needed, serves the bench on this machine only, and says where.
import { ensureBuilt } from './build.mjs'
import { main, root } from './setup.mjs'

await main(async () => {
  await ensureBuilt()
  const { preview } = await import('vite')
  const server = await preview({
    root: `${root}/app`,
    configFile: `${root}/vite.config.ts`,
    logLevel: 'warn',
    preview: { strictPort: false },
  })
  const address = server.httpServer.address()
  const port = typeof address === 'object' ? address?.port : address
  console.log(`Jawbench is ready at http://127.0.0.1:${port}/ (stop it with Ctrl+C)`)
})
