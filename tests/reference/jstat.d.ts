/** What the tests use of jstat, which brings no types. */
declare module "jstat" {
  interface Distribution {
    pdf(x: number, ...parameters: number[]): number;
    cdf(x: number, ...parameters: number[]): number;
    inv(p: number, ...parameters: number[]): number;
  }
  const jstat: { jStat: { gamma: Distribution; beta: Distribution } };
  export default jstat;
}
