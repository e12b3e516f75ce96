declare module '*.css'
declare module '*.mp4' {
  const name: string // of the file, beside the script
  export default name
}
declare module '*.webm' {
  const name: string
  export default name
}
