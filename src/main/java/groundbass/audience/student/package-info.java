/**
 * Who is signed in, how a student gets in by a mailed link, and what they agreed to. Knows nothing of what they take.
 */
package groundbass.audience.student;
