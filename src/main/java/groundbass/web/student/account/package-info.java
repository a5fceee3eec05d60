/** How a student gets in and out, and all that is kept about them. Knows no lesson. */
package groundbass.web.student.account;
