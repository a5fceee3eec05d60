-- Passes come before builds: a letter that signs somebody in, and an hour that has come, wait for none of many. The numbers
-- are those that db-scheduler gives new rows.
update scheduled_tasks set priority = 90 where task_name <> 'build-release';
update scheduled_tasks set priority = 50 where task_name = 'build-release';
