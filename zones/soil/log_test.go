package soil
