"""Climate and service: the job stays inside what its products allow."""
