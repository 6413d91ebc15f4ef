"""What a customer's document asks of a job, and where the job meets it."""
