/**
 * The calendar: what must be right before a lesson goes out, what goes out when, and going live exactly once. Knows
 * nothing of pages.
 *
 * <p>The way of a lesson to its readers:
 *
 * <ol>
 *   <li>The draft is <b>checked</b>: {@link groundbass.publishing.preflight.Preflight} reads its texts once and says what
 *       blocks it and what its educator must accept ({@link groundbass.publishing.Publisher} asks it, and so does
 *       {@code Promises} for what is written after a promise; {@link groundbass.publishing.LessonLook} tells the desk).
 *   <li>It is <b>fixed</b>: the very document that was checked becomes a revision ({@code Entering} asks for it, and
 *       {@code Promises} for what was written after a promise), and what else its files depend on a build specification, in
 *       {@code Freezing} and nowhere else.
 *   <li>It is <b>built</b>: the release waits in {@link groundbass.publishing.jobs.ReleaseQueue} until
 *       {@link groundbass.release.ReleaseBuilder} has made its files.
 *   <li>It <b>goes live</b>: {@link groundbass.publishing.PublicationJob} comes round, checks once more, and shows the latest
 *       release that is built. {@link groundbass.publishing.HourWatch} tells the educator what is in the way.
 *   <li>It is <b>told</b>: who asked for the news of its series is entered in the transaction that brings it out, and
 *       {@link groundbass.publishing.NewsRound} writes the letters in steps.
 * </ol>
 */
package groundbass.publishing;
