/**
 * What students ask about a place of a lesson, and which rights problems they report: until an educator has answered, and as
 * long as the account lasts. Knows nothing of pages.
 */
package groundbass.audience.question;
