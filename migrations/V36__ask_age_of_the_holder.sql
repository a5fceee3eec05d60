-- What is said of age is said by whoever opens the link or types the code, and kept with the account alone.
alter table sign_in drop column age_wording;
