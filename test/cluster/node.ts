/** A cluster of one node on this machine, in a folder of its own: the batch scheduler Slurm as Debian packs it, run for a test only. */
import { type ChildProcess, spawn, spawnSync } from 'node:child_process'
import { randomBytes } from 'node:crypto'
import { mkdirSync, writeFileSync } from 'node:fs'
import { hostname } from 'node:os'
import { delimiter, join } from 'node:path'

const PROGRAMS = ['munged', 'slurmctld', 'slurmd', 'sbatch']

/** The daemons lie where only an administrator's path leads. */
const env = { ...process.env, PATH: [process.env.PATH, '/usr/sbin', '/sbin'].join(delimiter) }

const call = (program: string, args: string[], more: NodeJS.ProcessEnv = {}) =>
  spawnSync(program, args, { env: { ...env, ...more }, encoding: 'utf8' })

const has = (program: string) => call('sh', ['-c', `command -v ${program}`]).status === 0
const missing = () => PROGRAMS.filter((program) => !has(program))

/** Why there can be no cluster here; '' where there can. Installs it where it may. */
export function hindrance(): string {
  if (missing().length === 0) return process.getuid?.() === 0 ? '' : 'only an administrator may start a cluster'
  if (process.getuid?.() !== 0 || !has('apt-get'))
    return `${missing().join(', ')} not installed, and nobody here may install it`
  const apt = (...args: string[]) =>
    call('apt-get', ['-q', '-o', 'DPkg::Lock::Timeout=600', ...args], { DEBIAN_FRONTEND: 'noninteractive' })
  apt('update')
  apt('install', '-y', '--no-install-recommends', 'slurm-wlm', 'munge')
  return missing().length === 0 ? '' : `${missing().join(', ')} could not be installed`
}

export interface Cluster {
  /** Runs one of its commands; what it says, without blanks at the ends. Throws an Error with what it complains of. */
  ask(program: string, ...args: string[]): string
  end(): void
}

/** `folder` is empty and its own; resolves when the node waits for work, to null where it never does, as where daemons are not let run. */
export async function startCluster(folder: string): Promise<Cluster | null> {
  const config = join(folder, 'slurm.conf')
  for (const name of ['state', 'spool']) mkdirSync(join(folder, name))
  writeFileSync(join(folder, 'munge.key'), randomBytes(1024), { mode: 0o400 })
  writeFileSync(config, configOf(folder))
  const own = { ...env, SLURM_CONF: config }
  const children: ChildProcess[] = []
  const start = (program: string, ...args: string[]) =>
    children.push(spawn(program, args, { env: own, stdio: 'ignore' }))
  const ask = (program: string, ...args: string[]) => {
    const { status, stdout, stderr } = call(program, args, { SLURM_CONF: config })
    if (status !== 0) throw new Error(`${program} ${args.join(' ')}: ${stderr}`)
    return stdout.trim()
  }
  const end = () => {
    for (const child of children.reverse()) child.kill()
  }
  const at = (option: string, name: string) => `--${option}=${join(folder, name)}`
  start(
    'munged',
    '--foreground',
    '--force',
    at('key-file', 'munge.key'),
    at('socket', 'munge.socket'),
    at('pid-file', 'munge.pid'),
    at('log-file', 'munge.log'),
    at('seed-file', 'munge.seed'),
  )
  const signs = () => call('munge', ['-n', `--socket=${join(folder, 'munge.socket')}`]).status === 0
  const idles = () => call('sinfo', ['-h', '-o', '%t'], { SLURM_CONF: config }).stdout?.trim() === 'idle'
  const begins = await until(signs, PATIENCE)
  start('slurmctld', '-D')
  start('slurmd', '-D')
  if (begins && (await until(idles, PATIENCE))) return { ask, end }
  end()
  return null
}

/** Looks after a daemon until it is given up. */
const PATIENCE = 150

/** Waits for a state of somebody else's, for which there is no event; false: it was looked for so often in vain. */
export async function until(holds: () => boolean, looks = Number.POSITIVE_INFINITY): Promise<boolean> {
  for (let look = 0; look < looks; look++) {
    if (holds()) return true
    await new Promise((resolve) => setTimeout(resolve, 200))
  }
  return false
}

const configOf = (folder: string) => `ClusterName=pieces
SlurmctldHost=${hostname()}(127.0.0.1)
SlurmctldPort=27817
SlurmdPort=27818
AuthType=auth/munge
AuthInfo=socket=${folder}/munge.socket
CredType=cred/munge
SlurmUser=root
SlurmdUser=root
StateSaveLocation=${folder}/state
SlurmdSpoolDir=${folder}/spool
SlurmctldPidFile=${folder}/slurmctld.pid
SlurmdPidFile=${folder}/slurmd.pid
SlurmctldLogFile=${folder}/slurmctld.log
SlurmdLogFile=${folder}/slurmd.log
ProctrackType=proctrack/pgid
TaskPlugin=task/none
SelectType=select/cons_tres
SelectTypeParameters=CR_CPU
SchedulerType=sched/builtin
JobRequeue=1
ReturnToService=2
NodeName=${hostname()} NodeAddr=127.0.0.1 CPUs=2 State=UNKNOWN
PartitionName=here Nodes=ALL Default=YES MaxTime=INFINITE State=UP
`
